package org.baywright.language.conversion;

import java.math.BigDecimal;
import java.util.Set;
import java.util.function.Function;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.ValueConverter;
import org.eclipse.xtext.conversion.ValueConverterException;
import org.eclipse.xtext.conversion.impl.AbstractDeclarativeValueConverterService;
import org.eclipse.xtext.nodemodel.INode;

/** Value converters by grammar rule. Numbers become decimals exactly as written. */
public class BayValueConverters extends AbstractDeclarativeValueConverterService {

	private Set<String> keywords;

	@ValueConverter(rule = "STRING")
	public IValueConverter<String> text() {
		return converter(Texts::unquote, Texts::quote);
	}

	@ValueConverter(rule = "ID")
	public IValueConverter<String> id() {
		return converter(Texts::plainName, this::escape);
	}

	@ValueConverter(rule = "Name")
	public IValueConverter<String> name() {
		return converter(Texts::plainName, this::escape);
	}

	@ValueConverter(rule = "ValueName")
	public IValueConverter<String> valueName() {
		return converter(Texts::plainName, this::escape);
	}

	@ValueConverter(rule = "QualifiedName")
	public IValueConverter<String> qualifiedName() {
		return converter(Texts::plainName, Function.identity());
	}

	@ValueConverter(rule = "SignedNumber")
	public IValueConverter<BigDecimal> signedNumber() {
		return converter(BigDecimal::new, BigDecimal::toPlainString);
	}

	@ValueConverter(rule = "Decimal")
	public IValueConverter<BigDecimal> decimal() {
		return converter(BigDecimal::new, BigDecimal::toPlainString);
	}

	private String escape(String name) {
		if (keywords == null) {
			keywords = Set.copyOf(GrammarUtil.getAllKeywords(getGrammar()));
		}
		return keywords.contains(name) ? '^' + name : name;
	}

	private static <T> IValueConverter<T> converter(Function<String, T> read, Function<T, String> write) {
		return new IValueConverter<>() {
			@Override
			public T toValue(String string, INode node) {
				try {
					return string == null ? null : read.apply(string);
				} catch (NumberFormatException e) {
					throw new ValueConverterException(string + " is not a number", node, e);
				}
			}

			@Override
			public String toString(T value) {
				return write.apply(value);
			}
		};
	}
}
