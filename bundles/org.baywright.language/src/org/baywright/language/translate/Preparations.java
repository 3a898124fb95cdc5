package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.Doing;
import org.baywright.language.bay.Driving;
import org.baywright.language.bay.Preparation;
import org.baywright.language.bay.Waiting;
import org.baywright.model.ValueSet;

/** Waiting, driving, and what a sentence says. */
final class Preparations {

	/** No test can be called so, for a name has no blanks. */
	static final String NAME = "the speed";
	private static final Values.Owner SPEED = Values.Owner.of(NAME, org.baywright.model.Preparation.SPEED);

	private final Context context;
	private final Limits limits;
	private final Values values;

	Preparations(Context context, Limits limits, Values values) {
		this.context = context;
		this.limits = limits;
		this.values = values;
	}

	/** Translates it, or returns nothing if it is not whole. */
	Optional<org.baywright.model.Preparation> of(Preparation written) {
		if (written instanceof Waiting waiting) {
			BigDecimal minutes = limits.minutes(waiting.getTime());
			if (minutes.signum() == 0) {
				context.report.incomplete();
				return Optional.empty();
			}
			return Optional.of(new org.baywright.model.Preparation.Wait(minutes));
		}
		if (written instanceof Driving driving) {
			Optional<ValueSet> speed = driving.getSpeed() == null ? Optional.empty()
					: values.anyBand(List.of(driving.getSpeed()), SPEED);
			return Optional.of(new org.baywright.model.Preparation.Drive(speed, limits.minutes(driving.getTime()),
					driving.getHow() == null ? "" : driving.getHow()));
		}
		return written instanceof Doing doing && doing.getHow() != null
				? Optional.of(new org.baywright.model.Preparation.Do(doing.getHow())) : Optional.empty();
	}
}
