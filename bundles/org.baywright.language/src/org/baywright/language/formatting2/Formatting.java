package org.baywright.language.formatting2;

import com.google.inject.Inject;
import com.google.inject.Provider;
import java.util.List;
import java.util.Optional;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.formatting2.FormatterPreferenceKeys;
import org.eclipse.xtext.formatting2.FormatterRequest;
import org.eclipse.xtext.formatting2.IFormatter2;
import org.eclipse.xtext.formatting2.regionaccess.ITextRegionAccess;
import org.eclipse.xtext.formatting2.regionaccess.ITextReplacement;
import org.eclipse.xtext.formatting2.regionaccess.TextRegionAccessBuilder;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.preferences.MapBasedPreferenceValues;
import org.eclipse.xtext.preferences.TypedPreferenceValues;
import org.eclipse.xtext.resource.XtextResource;
import org.eclipse.xtext.util.ExceptionAcceptor;

/** Formats whole files. */
public class Formatting {

	@Inject
	private Provider<FormatterRequest> requests;

	@Inject
	private Provider<IFormatter2> formatters;

	@Inject
	private TextRegionAccessBuilder regions;

	/**
	 * Returns what changes a file needs to be well laid out.
	 *
	 * @param resource the file
	 * @return the changes in the order of the text, or nothing if the file has a syntax error or a clause twice, which has to be put right
	 *         first
	 */
	public Optional<List<ITextReplacement>> changes(XtextResource resource) {
		if (!isWhole(resource)) {
			return Optional.empty();
		}
		return Optional.of(changes(regions.forNodeModel(resource).create()));
	}

	/** A clause that may stand once and is written twice leaves a piece of the tree that belongs to nothing. */
	private static boolean isWhole(XtextResource resource) {
		IParseResult parsed = resource.getParseResult();
		if (parsed == null || parsed.hasSyntaxErrors()) {
			return false;
		}
		for (INode node : parsed.getRootNode().getAsTreeIterable()) {
			EObject element = node.hasDirectSemanticElement() ? node.getSemanticElement() : null;
			if (element != null && element != parsed.getRootASTElement() && element.eContainer() == null) {
				return false;
			}
		}
		return true;
	}

	private List<ITextReplacement> changes(ITextRegionAccess access) {
		FormatterRequest request = requests.get();
		request.setTextRegionAccess(access);
		MapBasedPreferenceValues preferences = new MapBasedPreferenceValues();
		preferences.put(FormatterPreferenceKeys.indentation, "  ");
		preferences.put(FormatterPreferenceKeys.lineSeparator, "\n");
		request.setPreferences(TypedPreferenceValues.castOrWrap(preferences));
		request.setExceptionHandler(ExceptionAcceptor.THROWING);
		return formatters.get().format(request);
	}

	/**
	 * Returns the text of a file, well laid out.
	 *
	 * @param resource the file
	 * @return the text, or nothing if the file has a syntax error or a clause twice, which has to be put right first
	 */
	public Optional<String> format(XtextResource resource) {
		if (!isWhole(resource)) {
			return Optional.empty();
		}
		ITextRegionAccess access = regions.forNodeModel(resource).create();
		return Optional.of(access.getRewriter().renderToString(changes(access)));
	}
}
