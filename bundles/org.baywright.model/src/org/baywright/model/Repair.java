package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;

/**
 * How a confirmed fault is put right, and how that is proved.
 *
 * @param name name of the repair
 * @param title what a technician calls it
 * @param fixes faults it puts right
 * @param steps what to do
 * @param cautions hazards that its instructions warn of
 * @param tools tools it needs
 * @param takes duration in minutes, 0 or more
 * @param cost in the project's own money unit, 0 or more
 * @param skill who may do it
 * @param tellCustomer what the customer must know or accept
 * @param changesForGood what is not as before: a compromise, a disabled function
 * @param verified whether the author wrote how it is verified
 * @param verify steps that prove the repair
 * @param span where its name stands
 */
public record Repair(String name, String title, List<String> fixes, List<String> steps, List<String> cautions,
		List<String> tools, BigDecimal takes, BigDecimal cost, Skill skill, List<String> tellCustomer,
		List<String> changesForGood, boolean verified, List<VerifyStep> verify, Span span) implements Named {

	public Repair {
		fixes = List.copyOf(fixes);
		steps = List.copyOf(steps);
		cautions = List.copyOf(cautions);
		tools = List.copyOf(tools);
		tellCustomer = List.copyOf(tellCustomer);
		changesForGood = List.copyOf(changesForGood);
		verify = List.copyOf(verify);
	}
}
