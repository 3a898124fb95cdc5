package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.language.ide.text.Spelled;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Words;
import org.baywright.model.Problem;

/** Does what the advice of a problem says. */
final class ProblemFixes {

	private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");
	private static final Pattern INSTEAD = Pattern
			.compile("(?:Did you mean|Write) (`[^`]+`(?:(?:, | or )`[^`]+`)*)(.*)");
	private static final Pattern OFF_STEP = Pattern.compile("Write (.+?) or (.+?), or make the step finer\\.");
	private static final Pattern UNKNOWN = Pattern.compile("There is no (.+) `(.+)`\\.");
	private static final Pattern WITHOUT_SOURCE = Pattern.compile("The rule `(.+)` does not say .*");

	private final SortedMap<String, String> sources;
	private final Signature signature;

	ProblemFixes(SortedMap<String, String> sources, Signature signature) {
		this.sources = sources;
		this.signature = signature;
	}

	List<QuickFix> of(Problem problem) {
		String file = problem.span().file();
		String text = sources.get(file);
		if (text == null) {
			return List.of();
		}
		Map<String, Draft> drafts = new LinkedHashMap<>();
		switch (problem.id()) {
		case "syntax" -> syntax(problem, text, drafts);
		case "hidden-character" -> hidden(problem, drafts);
		case "no-provenance" -> provenance(problem, text, drafts);
		case "limit-off-step" -> offStep(problem, drafts);
		case "unknown-name" -> {
			instead(problem, drafts);
			declare(problem, text, drafts);
		}
		case "wrong-predicate", "expect-without-test", "outcome-without-test", "met-without-expect", "then-with-test",
				"unknown-trait" -> {
			// what the advice quotes stands for something that only the author knows
		}
		default -> instead(problem, drafts);
		}
		List<QuickFix> fixes = new ArrayList<>();
		drafts.forEach((title, draft) -> draft.done(title, problem.id(), sources).ifPresent(fixes::add));
		return fixes;
	}

	private static void hidden(Problem problem, Map<String, Draft> drafts) {
		if (problem.advice().equals("Take it out.")) {
			drafts.put("Take it out", replace(problem, ""));
		} else if (problem.advice().equals("Write a plain space.")) {
			drafts.put("Write a plain space", replace(problem, " "));
		}
	}

	/** What the advice offers in place of what is written. */
	private void instead(Problem problem, Map<String, Draft> drafts) {
		Matcher advice = INSTEAD.matcher(problem.advice());
		if (!advice.matches() || advice.group(2).contains("after it") || advice.group(2).contains("in place of")
				|| advice.group(2).contains(" with ") && !advice.group(2).contains("with a point")) {
			return;
		}
		Matcher quoted = QUOTED.matcher(advice.group(1));
		while (quoted.find()) {
			drafts.put("Write " + quoted.group(1), replace(problem, spelled(quoted.group(1))));
		}
	}

	private static String spelled(String name) {
		boolean plain = name.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == '_' || c == '.');
		return plain && Character.isLetter(name.charAt(0)) ? Spelled.writtenValue(name) : name;
	}

	private static Draft replace(Problem problem, String text) {
		return new Draft().add(problem.span().file(), new TextEdit(problem.span().offset(), problem.span().length(), text));
	}

	private void offStep(Problem problem, Map<String, Draft> drafts) {
		Matcher advice = OFF_STEP.matcher(problem.advice());
		if (advice.matches()) {
			drafts.put("Write " + advice.group(1), replace(problem, advice.group(1)));
			drafts.put("Write " + advice.group(2), replace(problem, advice.group(2)));
		}
	}

	private void syntax(Problem problem, String text, Map<String, Draft> drafts) {
		String file = problem.span().file();
		int end = problem.span().offset() + problem.span().length();
		String advice = problem.advice();
		if (advice.startsWith("Write \" at its end")) {
			closeText(problem, text.substring(problem.span().offset(), end), drafts);
		} else if (advice.startsWith("Write */")) {
			drafts.put("Close the comment", new Draft().add(file, TextEdit.insert(text.length(), " */")));
		} else if (advice.startsWith("Replace the typographic quotes")) {
			drafts.put("Write straight quotes", quotes(file, text, problem.span().offset()));
		} else if (advice.equals("Take it out.")) {
			drafts.put("Take it out", replace(problem, ""));
		} else if (advice.startsWith("Add `}` before it")) {
			int above = text.substring(0, problem.span().offset()).stripTrailing().length();
			drafts.put("Close the element above", new Draft().add(file, TextEdit.insert(above, "\n}")));
		} else if (advice.startsWith("Add `}`")) {
			String gap = text.endsWith("\n") ? "" : "\n";
			drafts.put("Close the element", new Draft().add(file, TextEdit.insert(text.length(), gap + "}\n")));
		} else {
			syntaxWord(problem, text, drafts);
		}
	}

	/** A brace at the end of the line opens the element; one further in may belong to either. */
	private static void closeText(Problem problem, String open, Map<String, Draft> drafts) {
		String said = open.stripTrailing().endsWith("{") ? open.substring(0, open.lastIndexOf('{')).stripTrailing() : open;
		if (said.indexOf('{') < 0 && said.indexOf('}') < 0) {
			int at = problem.span().offset() + said.length();
			drafts.put("Close the text", new Draft().add(problem.span().file(), TextEdit.insert(at, "\"")));
		}
	}

	private void syntaxWord(Problem problem, String text, Map<String, Draft> drafts) {
		Matcher advice = INSTEAD.matcher(problem.advice());
		if (advice.matches()) {
			Matcher first = QUOTED.matcher(advice.group(1));
			String word = first.find() ? first.group(1) : "";
			String written = text.substring(problem.span().offset(),
					Math.min(text.length(), problem.span().offset() + problem.span().length()));
			if (!word.isEmpty() && !word.equals(written)) {
				drafts.put("Write " + word, replace(problem, word));
			}
		}
	}

	/** All typographic quotes of the line. */
	private static Draft quotes(String file, String text, int offset) {
		Draft draft = new Draft();
		int end = Words.endOfLine(text, offset);
		for (int at = offset; at < end; at++) {
			if ("\u201C\u201D\u201E\u00AB\u00BB".indexOf(text.charAt(at)) >= 0) {
				draft.add(file, new TextEdit(at, 1, "\""));
			}
		}
		return draft;
	}

	private void provenance(Problem problem, String text, Map<String, Draft> drafts) {
		Matcher message = WITHOUT_SOURCE.matcher(problem.message());
		if (!message.matches()) {
			return;
		}
		List<String> lines = new ArrayList<>();
		if (problem.advice().contains("`because`")) {
			lines.add("because \"\"");
		}
		if (problem.advice().contains("`source`")) {
			lines.add("source practice");
		}
		if (problem.advice().contains("`by`")) {
			lines.add(signature.clause(text).orElse(signature.clauseOf("\"\"")));
		}
		new Places(text).addLine("rule", message.group(1), String.join("\n", lines))
				.ifPresent(edit -> drafts.put("Say where it comes from", new Draft().add(problem.span().file(), edit)));
	}

	/** Declares what a name that means nothing may be meant to be. */
	private void declare(Problem problem, String text, Map<String, Draft> drafts) {
		Matcher message = UNKNOWN.matcher(problem.message());
		if (!message.matches()) {
			return;
		}
		String name = message.group(2);
		Predicate<String> may = kind -> message.group(1).matches(".*\\b" + kind + "\\b.*");
		String written = Spelled.written(name);
		Map<String, String> elements = new LinkedHashMap<>();
		elements.put("sign", "sign " + written + " \"\"");
		elements.put("test", "test " + written + " \"\" {\n  results good, bad\n  takes 5 min\n}");
		elements.put("module", "module " + written + " \"\"");
		elements.put("state", "state " + written + " : off, on");
		elements.put("tool", "tool " + written + " \"\"");
		elements.put("hazard", "hazard " + written + " \"\" {\n  caution \"\"\n}");
		elements.put("family", "family " + written + " \"\"");
		elements.put("part", "part " + written + " \"\" {\n}");
		// where several kinds may stand, a bare name can only be a sign: each of the others needs a value behind it
		boolean several = message.group(1).contains(",");
		elements.forEach((kind, element) -> {
			if (may.test(kind) && name.indexOf('.') < 0 && (!several || kind.equals("sign"))) {
				drafts.put("Define the " + kind + " " + name, new Draft().add(problem.span().file(),
						new Places(text).addElement(element)));
			}
		});
		int point = name.indexOf('.');
		if (may.test("fault") && point > 0 && Spelled.isName(name.substring(0, point))
				&& Spelled.isName(name.substring(point + 1))) {
			drafts.put("Define the fault " + name,
					fault(problem.span().file(), text, name.substring(0, point), Spelled.written(name.substring(point + 1))));
		}
	}

	private Draft fault(String file, String text, String part, String fault) {
		for (Map.Entry<String, String> source : sources.entrySet()) {
			var edit = new Places(source.getValue()).addLine("part", part, "fault " + fault + " \"\"");
			if (edit.isPresent()) {
				return new Draft().add(source.getKey(), edit.get());
			}
		}
		return new Draft().add(file, new Places(text)
				.addElement("part " + Spelled.written(part) + " \"\" {\n  fault " + fault + " \"\"\n}"));
	}
}
