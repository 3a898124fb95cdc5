package org.baywright.model.write;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.baywright.model.Skill;
import org.baywright.model.Written;

/** An element being written: its first line, and its clauses between braces. */
final class Block {

	private final StringBuilder out;
	private boolean open;

	/** Begins an element with its word, its name and its title, which is left out where the name stands for it. */
	Block(String word, String name, String title) {
		out = new StringBuilder(word).append(' ').append(Written.name(name));
		if (!title.equals(name)) {
			out.append(' ').append(Written.text(title));
		}
	}

	/** Begins an element with its first words. */
	Block(String first) {
		out = new StringBuilder(first);
	}

	/** Goes on in the first line. */
	Block more(String text) {
		out.append(' ').append(text);
		return this;
	}

	/** As {@link #more}, unless there is nothing to list. */
	Block more(String word, String list) {
		return list.isEmpty() ? this : more(word + " " + list);
	}

	Block open() {
		if (!open) {
			out.append(" {\n");
			open = true;
		}
		return this;
	}

	/** Adds a clause. */
	Block line(String text) {
		open();
		out.append("  ").append(text).append('\n');
		return this;
	}

	/** Adds a clause, unless there is nothing to list. */
	Block line(String word, String list) {
		return list.isEmpty() ? this : line(word + " " + list);
	}

	/** Adds a clause for each of some texts. */
	Block texts(String word, List<String> texts) {
		texts.forEach(text -> line(word, Written.text(text)));
		return this;
	}

	/** Adds a number, unless it is 0. */
	Block cost(BigDecimal cost) {
		return cost.signum() == 0 ? this : line("cost " + Values.number(cost));
	}

	Block takes(String word, BigDecimal minutes) {
		return minutes.signum() == 0 ? this : line(word + " " + Values.time(minutes));
	}

	Block skill(Skill skill) {
		return skill == Skill.BASIC ? this : line("skill " + skill.name().toLowerCase(Locale.ROOT));
	}

	String done() {
		return out.append(open ? "}\n" : "\n").toString();
	}
}
