package org.baywright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.StringReader;
import java.util.List;

import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;

import org.baywright.cli.TestFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Holds reports against surefire-test-report.xsd, which is in the folder schemas of these tests. */
class JunitReportTest {

	private static Schema schema;

	@BeforeAll
	static void read() throws SAXException {
		schema = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
				.newSchema(TestFiles.own("schemas/surefire-test-report.xsd").toFile());
	}

	private static Document parse(String xml) throws Exception {
		DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
		factory.setNamespaceAware(true);
		return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
	}

	@Test
	void isValidBySchema() throws Exception {
		Document report = parse(JunitReport.of(List.of(Sample.project("rules/"))));
		schema.newValidator().validate(new DOMSource(report));
		report.getDocumentElement().removeAttribute("tests");
		assertThrows(SAXException.class, () -> schema.newValidator().validate(new DOMSource(report)));
	}

	@Test
	void severalProjectsAreSeveralSuites() throws Exception {
		Document report = parse(JunitReport.of(List.of(Sample.project("a/"), Sample.project("b/"))));
		NodeList suites = report.getElementsByTagName("testsuite");
		assertEquals(2, suites.getLength());
		for (int i = 0; i < suites.getLength(); i++) {
			schema.newValidator().validate(new DOMSource(suites.item(i)));
		}
	}

	@Test
	void hasOneTestCaseForEachJobAndEachErrorOfTheText() throws Exception {
		Element suite = parse(JunitReport.of(List.of(Sample.project("rules/")))).getDocumentElement();
		assertEquals("van <1>", suite.getAttribute("name"));
		assertEquals("4 1 1 1", suite.getAttribute("tests") + " " + suite.getAttribute("failures") + " "
				+ suite.getAttribute("skipped") + " " + suite.getAttribute("errors"));
		NodeList jobs = suite.getElementsByTagName("testcase");
		Element failing = (Element) jobs.item(1);
		assertEquals("Job \"2\" & more\uFFFD", failing.getAttribute("name"));
		assertEquals("rules/jobs.bay", failing.getAttribute("classname"));
		Element failure = (Element) failing.getFirstChild();
		assertEquals("the cause was battery.flat, but the rules clear it.", failure.getAttribute("message"));
		assertEquals("rules/jobs.bay:2:6\nRules that applied: high, low", failure.getTextContent());
		assertEquals(0, jobs.item(0).getChildNodes().getLength());
		assertEquals("skipped", jobs.item(2).getFirstChild().getNodeName());
		Element unread = (Element) jobs.item(3);
		assertEquals("2:22 rules/power/flat battery.bay", unread.getAttribute("name") + " " + unread.getAttribute("classname"));
		Element error = (Element) unread.getFirstChild();
		assertEquals("error unknown-name", error.getNodeName() + " " + error.getAttribute("type"));
		assertEquals("rules/power/flat battery.bay:2:22\nDefine it, or correct the name.", error.getTextContent());
	}
}
