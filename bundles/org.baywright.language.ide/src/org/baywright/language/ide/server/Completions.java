package org.baywright.language.ide.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.baywright.language.ide.complete.Completion;
import org.baywright.language.ide.complete.Proposal;
import org.baywright.language.ide.complete.Slot;
import org.baywright.language.text.SourceText;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Says proposals as the protocol does. */
final class Completions {

	private Completions() {
	}

	static CompletionList of(SourceText text, List<Proposal> proposals, boolean snippets) {
		List<CompletionItem> items = new ArrayList<>();
		for (Proposal proposal : proposals) {
			items.add(item(text, proposal, items.size(), snippets));
		}
		// the client can sift by itself only what it could have found by itself
		boolean byTitle = items.stream().anyMatch(item -> item.getFilterText() != null);
		return new CompletionList(byTitle || proposals.size() >= Completion.MOST, items);
	}

	private static CompletionItem item(SourceText text, Proposal proposal, int rank, boolean snippets) {
		CompletionItem item = new CompletionItem(proposal.label());
		item.setKind(kind(proposal.kind()));
		item.setSortText(String.format(Locale.ROOT, "%04d", rank));
		if (!proposal.detail().isEmpty()) {
			item.setDetail(proposal.detail());
		}
		if (!proposal.documentation().isEmpty()) {
			item.setDocumentation(new MarkupContent(MarkupKind.MARKDOWN, proposal.documentation()));
		}
		String typed = text.text().substring(proposal.replaceOffset(), proposal.replaceOffset() + proposal.replaceLength());
		if (!proposal.label().startsWith(typed)) {
			// it was found by its title, which the client does not know
			item.setFilterText(typed);
		}
		item.setInsertTextMode(InsertTextMode.AsIs);
		boolean slots = snippets && !proposal.slots().isEmpty();
		item.setInsertTextFormat(slots ? InsertTextFormat.Snippet : InsertTextFormat.PlainText);
		item.setTextEdit(Either.forLeft(new TextEdit(Positions.range(text, proposal.replaceOffset(), proposal.replaceLength()),
				slots ? snippet(proposal.text(), proposal.slots()) : proposal.text())));
		return item;
	}

	/** Returns the text with its slots as the protocol's snippets have them. */
	static String snippet(String text, List<Slot> slots) {
		StringBuilder out = new StringBuilder();
		int at = 0;
		for (Slot slot : slots) {
			out.append(escape(text.substring(at, slot.offset())));
			at = slot.offset() + slot.length();
			out.append("${").append(slot.group()).append(':').append(escape(text.substring(slot.offset(), at))).append('}');
		}
		return out.append(escape(text.substring(at))).toString();
	}

	private static String escape(String text) {
		return text.replaceAll("[\\\\$}]", "\\\\$0");
	}

	private static CompletionItemKind kind(Proposal.Kind kind) {
		return switch (kind) {
		case WORD -> CompletionItemKind.Keyword;
		case SKELETON -> CompletionItemKind.Snippet;
		case FAMILY -> CompletionItemKind.Class;
		case TRAIT -> CompletionItemKind.Property;
		case STATE -> CompletionItemKind.Enum;
		case TOOL -> CompletionItemKind.Struct;
		case HAZARD -> CompletionItemKind.Event;
		case MODULE -> CompletionItemKind.Module;
		case CODE -> CompletionItemKind.Constant;
		case SIGN -> CompletionItemKind.Variable;
		case PART -> CompletionItemKind.Interface;
		case FAULT -> CompletionItemKind.Field;
		case TEST -> CompletionItemKind.Function;
		case RULE -> CompletionItemKind.Method;
		case REPAIR -> CompletionItemKind.Constructor;
		case VALUE -> CompletionItemKind.EnumMember;
		case UNIT -> CompletionItemKind.Unit;
		case TEXT, NUMBER -> CompletionItemKind.Value;
		};
	}
}
