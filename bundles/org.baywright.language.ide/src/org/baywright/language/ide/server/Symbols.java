package org.baywright.language.ide.server;

import java.util.List;
import java.util.Locale;
import org.baywright.language.ide.outline.FoundSymbol;
import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.language.text.SourceText;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Says what is declared as the protocol does. */
final class Symbols {

	private Symbols() {
	}

	static DocumentSymbol of(SourceText text, OutlineItem item) {
		DocumentSymbol symbol = new DocumentSymbol(item.label(), kind(item.kind()),
				Positions.range(text, item.offset(), item.length()), Positions.range(text, item.nameOffset(), item.nameLength()),
				item.detail(), List.of());
		symbol.setChildren(item.children().stream().map(child -> of(text, child)).toList());
		return symbol;
	}

	static WorkspaceSymbol of(Host host, SourceText text, FoundSymbol found) {
		Location place = new Location(host.uri(found.file()), Positions.range(text, found.offset(), found.length()));
		WorkspaceSymbol symbol = new WorkspaceSymbol(found.name(),
				kind(OutlineItem.Kind.valueOf(found.kind().name().toUpperCase(Locale.ROOT))), Either.forLeft(place));
		if (!found.title().isEmpty()) {
			symbol.setContainerName(found.title());
		}
		return symbol;
	}

	private static SymbolKind kind(OutlineItem.Kind kind) {
		return switch (kind) {
		case FAMILY -> SymbolKind.Class;
		case TRAIT -> SymbolKind.Property;
		case STATE -> SymbolKind.Enum;
		case TOOL -> SymbolKind.Struct;
		case SIGNOFF -> SymbolKind.Key;
		case WORKSHOP -> SymbolKind.Package;
		case HAZARD -> SymbolKind.Event;
		case MODULE -> SymbolKind.Module;
		case CODE -> SymbolKind.Constant;
		case SIGN -> SymbolKind.Variable;
		case PART -> SymbolKind.Interface;
		case FAULT -> SymbolKind.Field;
		case TEST -> SymbolKind.Function;
		case RULE -> SymbolKind.Method;
		case REPAIR -> SymbolKind.Constructor;
		case VALUE -> SymbolKind.EnumMember;
		case EXCLUSIVE, LAW -> SymbolKind.Operator;
		case CASE -> SymbolKind.Object;
		case REVIEW, REMARK, REVIEWER, ACCEPTANCE, BUILDSON -> SymbolKind.String;
		};
	}
}
