package org.baywright.model.unit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.fhir.ucum.BaseUnit;
import org.fhir.ucum.Component;
import org.fhir.ucum.DefinedUnit;
import org.fhir.ucum.ExpressionParser;
import org.fhir.ucum.Factor;
import org.fhir.ucum.Operator;
import org.fhir.ucum.Symbol;
import org.fhir.ucum.Term;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.fhir.ucum.UcumModel;
import org.fhir.ucum.definitions.XmlDefinitionsParser;

/**
 * UCUM's own definitions, worked out exactly. The library's converter is not used: it rounds to the digits of its
 * input and refuses temperatures.
 */
final class UcumTable {

	private static final Ratio KELVIN_AT_0_CELSIUS = Ratio.of(new BigDecimal("273.15"));
	private static final Ratio RANKINE_AT_0_FAHRENHEIT = Ratio.of(new BigDecimal("459.67"));
	private static final Ratio FIVE_NINTHS = Ratio.of(5, 9);

	private final UcumModel model;
	private final ExpressionParser parser;
	private final Map<String, Optional<Measure>> known = new ConcurrentHashMap<>();

	UcumTable() {
		try (InputStream in = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
			model = new XmlDefinitionsParser().parse(in);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		} catch (UcumException e) {
			throw new IllegalStateException("the unit definitions cannot be read", e);
		}
		parser = new ExpressionParser(model);
	}

	/** Returns what a UCUM code means, or nothing if UCUM does not know it. */
	Optional<Measure> measure(String code) {
		Optional<Measure> cached = known.get(code);
		if (cached == null) {
			cached = read(code);
			known.put(code, cached);
		}
		return cached;
	}

	private Optional<Measure> read(String code) {
		if (code.isEmpty()) {
			return Optional.of(Measure.NUMBER);
		}
		try {
			return Optional.of(evaluate(parse(code)));
		} catch (UcumException | RuntimeException unknown) {
			// the parser also signals malformed codes by unchecked exceptions
			return Optional.empty();
		}
	}

	private synchronized Term parse(String code) throws UcumException {
		return parser.parse(code);
	}

	/** A term is {@code component op term}; a division negates the exponents of its next component only. */
	private Measure evaluate(Term term) throws UcumException {
		if (!term.hasOp() && !term.hasTerm()) {
			return evaluate(term.getComp());
		}
		Measure result = Measure.NUMBER;
		int sign = 1;
		for (Term next = term; next != null; next = next.getTerm()) {
			if (next.hasComp()) {
				result = result.times(evaluate(next.getComp()), sign);
			}
			sign = next.getOp() == Operator.DIVISION ? -1 : 1;
		}
		return result;
	}

	private Measure evaluate(Component component) throws UcumException {
		if (component instanceof Factor factor) {
			return Measure.NUMBER.scaled(Ratio.of(factor.getValue(), 1));
		}
		if (component instanceof Term term) {
			return evaluate(term);
		}
		Symbol symbol = (Symbol) component;
		Measure unit = evaluate(symbol);
		if (symbol.hasPrefix()) {
			unit = new Measure(unit.factor().times(ratio(symbol.getPrefix().getValue())), Ratio.ZERO, unit.exponents());
		}
		return unit.power(symbol.getExponent());
	}

	private Measure evaluate(Symbol symbol) throws UcumException {
		String code = symbol.getUnit().getCode();
		if (symbol.getUnit() instanceof BaseUnit) {
			return Measure.base(code);
		}
		DefinedUnit unit = (DefinedUnit) symbol.getUnit();
		if (unit.isSpecial()) {
			return switch (code) {
			case "Cel" -> new Measure(Ratio.ONE, KELVIN_AT_0_CELSIUS, Map.of("K", 1));
			case "[degF]" -> new Measure(FIVE_NINTHS, RANKINE_AT_0_FAHRENHEIT.times(FIVE_NINTHS), Map.of("K", 1));
			// logarithmic and arbitrary scales compare with nothing but themselves
			default -> Measure.base(code);
			};
		}
		Measure meaning = unit.getValue().getUnit() == null || unit.getValue().getUnit().isEmpty() ? Measure.NUMBER
				: evaluate(parse(unit.getValue().getUnit()));
		return new Measure(meaning.factor().times(ratio(unit.getValue().getValue())), Ratio.ZERO, meaning.exponents());
	}

	private static Ratio ratio(org.fhir.ucum.Decimal value) {
		return Ratio.of(new BigDecimal(value.asDecimal()));
	}
}
