package org.baywright.analysis.check;

import java.util.HashMap;
import java.util.Map;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.proof.Check;
import org.baywright.analysis.proof.Checked;
import org.baywright.model.Code;
import org.baywright.model.Severity;
import org.baywright.model.code.CodeText;

/** One code of a module under two names: rules may then take it for present and for absent at once. */
@RuleCheck(id = "code-twice", severity = Severity.ERROR, summary = "One code of a module has two names")
public final class CodeTwice implements Check {

	private record Kept(String module, CodeText text) {
	}

	@Override
	public void report(Checked checked) {
		Map<Kept, Code> first = new HashMap<>();
		for (Code code : checked.base().codes()) {
			Code other = first.putIfAbsent(new Kept(code.module(), code.text()), code);
			if (other != null && !other.name().equals(code.name())) {
				checked.flaw(this, code.module() + "/" + other.name() + "+" + code.name(), code.span())
						.says("Code " + code.name() + " is " + code.text().display() + " of module " + code.module() + ", and so is code "
								+ other.name() + "; keep one name for it.")
						.near(other.span(), "code " + other.name()).about(code.module() + code.text()).add();
			}
		}
	}
}
