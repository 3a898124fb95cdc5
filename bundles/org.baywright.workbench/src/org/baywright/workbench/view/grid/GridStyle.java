package org.baywright.workbench.view.grid;

import java.util.List;

import org.baywright.model.VerdictKind;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.view.Grounds;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.nebula.widgets.nattable.config.CellConfigAttributes;
import org.eclipse.nebula.widgets.nattable.config.IConfigRegistry;
import org.eclipse.nebula.widgets.nattable.grid.GridRegion;
import org.eclipse.nebula.widgets.nattable.painter.cell.BackgroundPainter;
import org.eclipse.nebula.widgets.nattable.painter.cell.ICellPainter;
import org.eclipse.nebula.widgets.nattable.painter.cell.TextPainter;
import org.eclipse.nebula.widgets.nattable.painter.cell.decorator.PaddingDecorator;
import org.eclipse.nebula.widgets.nattable.style.CellStyleAttributes;
import org.eclipse.nebula.widgets.nattable.style.DisplayMode;
import org.eclipse.nebula.widgets.nattable.style.HorizontalAlignmentEnum;
import org.eclipse.nebula.widgets.nattable.style.Style;
import org.eclipse.nebula.widgets.nattable.style.VerticalAlignmentEnum;
import org.eclipse.nebula.widgets.nattable.style.theme.DarkNatTableThemeConfiguration;
import org.eclipse.nebula.widgets.nattable.style.theme.ModernNatTableThemeConfiguration;
import org.eclipse.nebula.widgets.nattable.style.theme.DefaultNatTableThemeConfiguration;

/** Colours and letters of the grid: those of the picture, on the table's light or dark theme. */
final class GridStyle {

	/** Label of faults that no test can tell apart. */
	static final String UNSPLIT = "UNSPLIT";

	private GridStyle() {
	}

	static void apply(NatTable table, Theme theme) {
		DefaultNatTableThemeConfiguration look = theme.equals(Theme.DARK) ? new DarkNatTableThemeConfiguration()
				: new ModernNatTableThemeConfiguration();
		look.defaultHAlign = HorizontalAlignmentEnum.LEFT;
		look.defaultVAlign = VerticalAlignmentEnum.TOP;
		look.cHeaderHAlign = HorizontalAlignmentEnum.LEFT;
		look.rHeaderHAlign = HorizontalAlignmentEnum.LEFT;
		look.rHeaderVAlign = VerticalAlignmentEnum.TOP;
		look.defaultBgColor = Grounds.colour(theme.background());
		look.defaultFgColor = Grounds.colour(theme.text());
		table.setTheme(look);
		IConfigRegistry registry = table.getConfigRegistry();
		for (String region : List.of(GridRegion.BODY, GridRegion.COLUMN_HEADER, GridRegion.ROW_HEADER)) {
			registry.registerConfigAttribute(CellConfigAttributes.CELL_PAINTER, wrapping(), DisplayMode.NORMAL, region);
		}
		paint(registry, VerdictKind.CONFIRMED.name(), theme, Node.Kind.CONFIRMED);
		paint(registry, VerdictKind.SUSPECTED.name(), theme, Node.Kind.SUSPECTED);
		paint(registry, VerdictKind.CLEARED.name(), theme, Node.Kind.CLEARED);
		paint(registry, UNSPLIT, theme, Node.Kind.SUSPECTED);
		table.refresh();
	}

	private static ICellPainter wrapping() {
		return new BackgroundPainter(new PaddingDecorator(new TextPainter(true, false, 0, false, true), 3, 5, 3, 5));
	}

	private static void paint(IConfigRegistry registry, String label, Theme theme, Node.Kind kind) {
		Style style = new Style();
		style.setAttributeValue(CellStyleAttributes.BACKGROUND_COLOR, Grounds.colour(theme.boxes().get(kind).fill()));
		style.setAttributeValue(CellStyleAttributes.FOREGROUND_COLOR, Grounds.colour(theme.text()));
		registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, style, DisplayMode.NORMAL, label);
	}
}
