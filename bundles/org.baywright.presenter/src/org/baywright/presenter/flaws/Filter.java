package org.baywright.presenter.flaws;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

import org.baywright.model.Severity;
import org.baywright.presenter.Say;

/**
 * Which flaws are shown.
 *
 * @param severities severities to show
 * @param accepted whether to show flaws that the author accepted
 * @param text words that must all stand in the flaw, in capitals or not; the empty text shows all
 * @param file only flaws in this file
 */
public record Filter(Set<Severity> severities, boolean accepted, String text, Optional<String> file) {

	/** Shows all that nobody accepted. */
	public static final Filter OPEN = new Filter(EnumSet.allOf(Severity.class), false, "", Optional.empty());

	public Filter {
		severities = severities.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(severities));
	}

	/** Returns the same filter with a severity shown or not. */
	public Filter with(Severity severity, boolean shown) {
		EnumSet<Severity> changed = EnumSet.noneOf(Severity.class);
		changed.addAll(severities);
		if (shown) {
			changed.add(severity);
		} else {
			changed.remove(severity);
		}
		return new Filter(changed, accepted, text, file);
	}

	public Filter withAccepted(boolean shown) {
		return new Filter(severities, shown, text, file);
	}

	public Filter withText(String words) {
		return new Filter(severities, accepted, words, file);
	}

	public Filter withFile(Optional<String> only) {
		return new Filter(severities, accepted, text, only);
	}

	boolean shows(Item item) {
		return severities.contains(item.severity()) && (accepted || item.accepted().isEmpty())
				&& (file.isEmpty() || file.get().equals(item.place().span().file())) && Say.holds(item.searched(), text);
	}
}
