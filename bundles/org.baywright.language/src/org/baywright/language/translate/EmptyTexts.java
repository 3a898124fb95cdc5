package org.baywright.language.translate;

import java.util.List;
import java.util.Map;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Element;
import org.baywright.model.ProblemKind;
import org.baywright.model.words.Invisible;
import org.eclipse.emf.ecore.EAttribute;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;

/**
 * Reports quotes with nothing in them where a person must read something. An empty title is none: the name stands for it.
 * What is empty where only one form is right, a code or a VIN, is reported with that form.
 */
final class EmptyTexts {

	/** The word in front of a text and what to write. */
	private record Wanted(String word, String advice) {
	}

	private static final Map<EAttribute, Wanted> WANTED = Map.ofEntries(
			Map.entry(BayPackage.Literals.HAZARD__CAUTIONS, new Wanted("caution", "Write what protects from the hazard.")),
			Map.entry(BayPackage.Literals.HAZARD__LICENSED, new Wanted("licensed", "Write who may work on it, or take the line out.")),
			Map.entry(BayPackage.Literals.HAZARD__REFERENCES, new Wanted("reference", "Write where it is written, or take the line out.")),
			Map.entry(BayPackage.Literals.DOING__HOW, new Wanted("prepare` or `do", "Write what to do, or take the line out.")),
			Map.entry(BayPackage.Literals.DRIVING__HOW, new Wanted("drive", "Write what matters on the drive, or take the quotes out.")),
			Map.entry(BayPackage.Literals.TEST__PLACE, new Wanted("place", "Write where it is, or take the line out.")),
			Map.entry(BayPackage.Literals.PART__PLACE, new Wanted("place", "Write where it is, or take the line out.")),
			Map.entry(BayPackage.Literals.REPAIR__PLACE, new Wanted("place", "Write where it is, or take the line out.")),
			Map.entry(BayPackage.Literals.PICTURE__WORDS, new Wanted("picture", "Write what it shows, for those who cannot see it.")),
			Map.entry(BayPackage.Literals.PRECAUTION__TEXT, new Wanted("do_not_drive`, `do_not_start` or `make_safe", "Write why, or how, or take the quotes out.")),
			Map.entry(BayPackage.Literals.NOTICE__TEXT, new Wanted("tell", "Write what they must know, or take the line out.")),
			Map.entry(BayPackage.Literals.NOTICE__WHY, new Wanted("because", "Write why they must be told, or take it out.")),
			Map.entry(BayPackage.Literals.TEST__FITS, new Wanted("fits", "Write what is fitted for the test, or take the line out.")),
			Map.entry(BayPackage.Literals.LAW__TITLE, new Wanted("law", "Write the law in words.")),
			Map.entry(BayPackage.Literals.RULE__BECAUSE, new Wanted("because", "Write why the rule is right.")),
			Map.entry(BayPackage.Literals.PUBLISHED__TEXT, new Wanted("published", "Write where it can be read.")),
			Map.entry(BayPackage.Literals.RULE__AUTHORS, new Wanted("by", "Write who says so.")),
			Map.entry(BayPackage.Literals.REFERRAL__TO_WHOM, new Wanted("refers", "Write to whom the customer is sent, and with what.")),
			Map.entry(BayPackage.Literals.REPAIR__STEPS, new Wanted("steps", "Write what is to be done, in the order of the work.")),
			Map.entry(BayPackage.Literals.REPAIR__TELL, new Wanted("tell_customer", "Write what the customer must know, or take the line out.")),
			Map.entry(BayPackage.Literals.REPAIR__CHANGES, new Wanted("changes_for_good", "Write what is not as before, or take the line out.")),
			Map.entry(BayPackage.Literals.CASE__NAME, new Wanted("job", "Write a number or a name by which the job can be found again.")),
			Map.entry(BayPackage.Literals.REVIEW__REVIEWER, new Wanted("by", "Write who looked at the rule.")),
			Map.entry(BayPackage.Literals.REVIEW__NOTE, new Wanted("agrees` or `objects", "Write the remark, or take the quotes out.")),
			Map.entry(BayPackage.Literals.HAZARD_AGREED__QUALIFICATION, new Wanted("by", "Write what the reviewer must be qualified for.")),
			Map.entry(BayPackage.Literals.REVIEWER__NAME, new Wanted("reviewer", "Write who it is.")),
			Map.entry(BayPackage.Literals.REVIEWER__QUALIFICATIONS, new Wanted("qualified", "Write what the reviewer is qualified for.")),
			Map.entry(BayPackage.Literals.REMARK__CHANGE, new Wanted("change", "Write which change is meant.")),
			Map.entry(BayPackage.Literals.REMARK__AUTHOR, new Wanted("by", "Write who remarks it.")),
			Map.entry(BayPackage.Literals.REMARK__NOTE, new Wanted("remark", "Write the remark.")),
			Map.entry(BayPackage.Literals.REMARK__LINES, new Wanted("at", "Copy the line of the rule that is meant, or take it out.")),
			Map.entry(BayPackage.Literals.REPLY__AUTHOR, new Wanted("by", "Write who answers.")),
			Map.entry(BayPackage.Literals.REPLY__NOTE, new Wanted("reply` or `settled", "Write the answer, or take the quotes out.")),
			Map.entry(BayPackage.Literals.ACCEPTANCE__AUTHOR, new Wanted("by", "Write who accepts it.")));

	private static final int BLANK_BRAILLE = 0x2800;

	private EmptyTexts() {
	}

	static void report(Element element, Context context) {
		of(element, context);
		EcoreUtil.<EObject>getAllProperContents(element, false).forEachRemaining(part -> of(part, context));
	}

	/** Returns whether nothing can be seen in a text: some blanks are none to a program. */
	static boolean saysNothing(String text) {
		return text.codePoints().allMatch(c -> Character.isWhitespace(c) || Character.isSpaceChar(c)
				|| Invisible.is(c) || c == BLANK_BRAILLE);
	}

	private static void of(EObject part, Context context) {
		for (EAttribute attribute : part.eClass().getEAllAttributes()) {
			Wanted wanted = WANTED.get(attribute);
			if (wanted != null) {
				Object value = part.eGet(attribute);
				List<?> texts = value instanceof List<?> many ? many : value == null ? List.of() : List.of(value);
				for (int i = 0; i < texts.size(); i++) {
					if (saysNothing((String) texts.get(i))) {
						context.report.tell(ProblemKind.EMPTY_TEXT, context.source.span(part, attribute, i),
								"The text after `" + wanted.word() + "` says nothing.", wanted.advice());
					}
				}
			}
		}
	}
}
