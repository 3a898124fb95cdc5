package org.baywright.presenter.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Locale;

import javax.xml.parsers.DocumentBuilderFactory;

import org.baywright.model.Span;
import org.baywright.presenter.Examples;
import org.baywright.presenter.RuleScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class SvgTest {

	private static LaidOut layout(Picture picture) {
		return Layout.of(picture, TextMetrics.FIXED, () -> false);
	}

	private static Document parse(String svg) throws Exception {
		DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
		factory.setNamespaceAware(true);
		factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
		return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
	}

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void holdsEveryBoxAndLine(String name) throws Exception {
		LaidOut laidOut = layout(Picture.of(Examples.checked(name).rules(), RuleScope.all()));
		Element svg = parse(Svg.write(laidOut, Theme.LIGHT)).getDocumentElement();
		assertEquals("svg", svg.getLocalName());
		assertEquals("http://www.w3.org/2000/svg", svg.getNamespaceURI());
		assertEquals(laidOut.routes().size(), svg.getElementsByTagName("polyline").getLength());
		long labels = laidOut.routes().stream().filter(route -> !route.lines().isEmpty()).count();
		assertEquals(1 + laidOut.boxes().size() + labels, svg.getElementsByTagName("rect").getLength());
		assertEquals(1 + laidOut.boxes().size() + laidOut.routes().size(), svg.getElementsByTagName("title").getLength());
		String all = svg.getTextContent();
		laidOut.boxes().forEach(box -> assertTrue(all.contains(box.node().description()), box.node().description()));
	}

	@Test
	void escapesWhatAuthorsWrite() throws Exception {
		String title = "a < b & \"c\" > 'd' \u0001 \uD83D\uDE97 ]]>";
		Picture picture = new Picture(title, "", List.of(new Node("rule:a", Node.Kind.RULE, title, title, Span.NONE)), List.of(),
				1);
		Element svg = parse(Svg.write(layout(picture), Theme.DARK)).getDocumentElement();
		assertEquals(title.replace('\u0001', '\uFFFD'), svg.getElementsByTagName("title").item(0).getTextContent());
		assertTrue(svg.getTextContent().contains("\uD83D\uDE97"));
	}

	@Test
	void isTheSameInEveryLocale() {
		LaidOut laidOut = layout(Picture.of(Examples.checked("light-van").rules(), RuleScope.all()));
		String english = Svg.write(laidOut, Theme.LIGHT);
		Locale before = Locale.getDefault();
		try {
			Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
			assertEquals(english, Svg.write(laidOut, Theme.LIGHT));
		} finally {
			Locale.setDefault(before);
		}
	}

	@Test
	void textStaysWithinItsBox() {
		LaidOut laidOut = layout(Picture.of(Examples.checked("light-van").rules(), RuleScope.all()));
		laidOut.boxes().forEach(box -> {
			double height = 2 * Shape.PADDING + box.title().size() * TextMetrics.FIXED.height(TextMetrics.Style.TITLE)
					+ box.detail().size() * TextMetrics.FIXED.height(TextMetrics.Style.DETAIL);
			assertTrue(height <= box.bounds().height() + 0.01, box.toString());
		});
	}

	/** WCAG 2.1, 1.4.3 and 1.4.11: text 4.5 to 1, outlines and lines 3 to 1. The formula is from its definition of contrast. */
	@Test
	void coloursCanBeTold() throws Exception {
		for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
			theme.boxes().forEach((kind, paint) -> {
				assertTrue(contrast(theme.text(), paint.fill()) >= 4.5, kind + " title");
				assertTrue(contrast(theme.label(), paint.fill()) >= 4.5, kind + " detail");
				assertTrue(contrast(paint.outline(), theme.background()) >= 3, kind + " outline");
			});
			assertEquals(Node.Kind.values().length, theme.boxes().size());
			assertTrue(contrast(theme.label(), theme.background()) >= 4.5);
			assertTrue(contrast(theme.line(), theme.background()) >= 3);
			assertTrue(contrast(theme.alternative(), theme.background()) >= 3);
			assertTrue(contrast(theme.chosen(), theme.background()) >= 3);
		}
		assertFalse(contrast("#777777", "#888888") >= 3);
	}

	private static double contrast(String one, String other) {
		double a = luminance(one);
		double b = luminance(other);
		return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
	}

	private static double luminance(String colour) {
		int rgb = Integer.parseInt(colour.substring(1), 16);
		return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
	}

	private static double linear(int channel) {
		double value = channel / 255.0;
		return value <= 0.03928 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
	}

	@Test
	void labelsAreDrawn() throws Exception {
		LaidOut laidOut = layout(Picture.of(Examples.checked("farm-tractor").rules(), RuleScope.all()));
		NodeList texts = parse(Svg.write(laidOut, Theme.LIGHT)).getElementsByTagName("text");
		long lines = laidOut.boxes().stream().mapToLong(box -> box.title().size() + box.detail().size()).sum()
				+ laidOut.routes().stream().mapToLong(route -> route.lines().size()).sum();
		assertEquals(lines, texts.getLength());
	}
}
