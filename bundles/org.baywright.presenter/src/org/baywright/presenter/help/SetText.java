package org.baywright.presenter.help;

import java.util.ArrayList;
import java.util.List;

import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.Emphasis;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.StrongEmphasis;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;

/**
 * A text in Markdown, set for a plain text widget: the characters to show, and how stretches of them look.
 *
 * @param text the characters
 * @param runs stretches that are not plain, in order of their start; stretches may overlap
 */
public record SetText(String text, List<Run> runs) {

	/** How a stretch looks. */
	public enum Look {
		TITLE, HEADING, STRONG, EMPHASIS, CODE, BLOCK, LINK
	}

	/**
	 * A stretch of the text.
	 *
	 * @param start first character, from 0
	 * @param length number of characters
	 * @param look how it looks
	 * @param target where a link leads; the empty text otherwise
	 */
	public record Run(int start, int length, Look look, String target) {
	}

	public SetText {
		runs = List.copyOf(runs);
	}

	/** Sets a text. */
	public static SetText of(String markdown) {
		Setter setter = new Setter();
		Parser.builder().build().parse(markdown).accept(setter);
		setter.runs.sort((a, b) -> a.start() != b.start() ? Integer.compare(a.start(), b.start()) : Integer.compare(b.length(), a.length()));
		return new SetText(setter.out.toString().stripTrailing() + "\n", setter.runs);
	}

	/** Returns where the link at a character leads; the empty text if there is none. */
	public String linkAt(int offset) {
		return runs.stream().filter(run -> run.look() == Look.LINK && offset >= run.start() && offset < run.start() + run.length())
				.map(Run::target).findFirst().orElse("");
	}

	private static final class Setter extends AbstractVisitor {

		private final StringBuilder out = new StringBuilder();
		private final List<Run> runs = new ArrayList<>();
		private String indent = "";
		private int number;

		private void run(Look look, String target, Runnable content) {
			int start = out.length();
			content.run();
			if (out.length() > start) {
				runs.add(new Run(start, out.length() - start, look, target));
			}
		}

		private void gap() {
			if (!out.isEmpty()) {
				while (out.length() > 1 && out.charAt(out.length() - 1) == '\n' && out.charAt(out.length() - 2) == '\n') {
					out.setLength(out.length() - 1);
				}
				out.append(out.charAt(out.length() - 1) == '\n' ? "\n" : "\n\n");
			}
		}

		@Override
		public void visit(Heading heading) {
			gap();
			run(heading.getLevel() == 1 ? Look.TITLE : Look.HEADING, "", () -> visitChildren(heading));
			out.append("\n\n");
		}

		@Override
		public void visit(Paragraph paragraph) {
			Node parent = paragraph.getParent();
			if (!(parent instanceof ListItem) || paragraph.getPrevious() != null) {
				gap();
				out.append(indent);
			}
			visitChildren(paragraph);
			out.append('\n');
		}

		@Override
		public void visit(BulletList list) {
			list(list, 0);
		}

		@Override
		public void visit(OrderedList list) {
			list(list, list.getStartNumber());
		}

		private void list(Node list, int first) {
			if (!(list.getParent() instanceof ListItem)) {
				gap();
			}
			int before = number;
			number = first;
			visitChildren(list);
			number = before;
		}

		@Override
		public void visit(ListItem item) {
			String mark = item.getParent() instanceof OrderedList ? number++ + ". " : "\u2022 ";
			out.append(indent).append("  ").append(mark);
			String before = indent;
			indent += "     ";
			visitChildren(item);
			indent = before;
		}

		@Override
		public void visit(BlockQuote quote) {
			String before = indent;
			indent += "    ";
			visitChildren(quote);
			indent = before;
		}

		@Override
		public void visit(FencedCodeBlock block) {
			block(block.getLiteral());
		}

		@Override
		public void visit(IndentedCodeBlock block) {
			block(block.getLiteral());
		}

		private void block(String literal) {
			gap();
			run(Look.BLOCK, "", () -> literal.stripTrailing().lines().forEach(line -> out.append("    ").append(line).append('\n')));
		}

		@Override
		public void visit(Text text) {
			out.append(text.getLiteral());
		}

		@Override
		public void visit(Code code) {
			run(Look.CODE, "", () -> out.append(code.getLiteral()));
		}

		@Override
		public void visit(Emphasis emphasis) {
			run(Look.EMPHASIS, "", () -> visitChildren(emphasis));
		}

		@Override
		public void visit(StrongEmphasis strong) {
			run(Look.STRONG, "", () -> visitChildren(strong));
		}

		@Override
		public void visit(Link link) {
			run(Look.LINK, link.getDestination(), () -> visitChildren(link));
		}

		@Override
		public void visit(SoftLineBreak lineBreak) {
			out.append(' ');
		}

		@Override
		public void visit(HardLineBreak lineBreak) {
			out.append('\n').append(indent);
		}
	}
}
