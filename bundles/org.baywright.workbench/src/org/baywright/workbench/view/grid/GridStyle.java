package org.baywright.workbench.view.grid;

import java.util.List;

import org.baywright.model.VerdictKind;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.view.Grounds;
import org.eclipse.jface.resource.JFaceResources;
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

	/** Label of tests and faults that no rule uses. */
	static final String UNUSED = "UNUSED";

	private GridStyle() {
	}

	static void apply(NatTable table, Theme theme) {
		DefaultNatTableThemeConfiguration look = theme.equals(Theme.DARK) ? new DarkNatTableThemeConfiguration()
				: new ModernNatTableThemeConfiguration();
		look.defaultHAlign = HorizontalAlignmentEnum.LEFT;
		look.defaultVAlign = VerticalAlignmentEnum.TOP;
		look.evenRowBgColor = Grounds.colour(theme.background());
		look.oddRowBgColor = look.evenRowBgColor;
		table.setTheme(look);
		table.setBackground(Grounds.colour(theme.background()));
		IConfigRegistry registry = table.getConfigRegistry();
		String head = theme.boxes().get(Node.Kind.CODE).fill();
		paint(registry, GridRegion.BODY, theme, theme.background());
		for (String region : List.of(GridRegion.COLUMN_HEADER, GridRegion.ROW_HEADER, GridRegion.CORNER)) {
			paint(registry, region, theme, head);
		}
		for (String region : List.of(GridRegion.BODY, GridRegion.COLUMN_HEADER, GridRegion.ROW_HEADER, GridRegion.CORNER)) {
			registry.registerConfigAttribute(CellConfigAttributes.CELL_PAINTER, wrapping(), DisplayMode.NORMAL, region);
		}
		paint(registry, VerdictKind.CONFIRMED.name(), theme, theme.boxes().get(Node.Kind.CONFIRMED).fill());
		paint(registry, VerdictKind.SUSPECTED.name(), theme, theme.boxes().get(Node.Kind.SUSPECTED).fill());
		paint(registry, VerdictKind.CLEARED.name(), theme, theme.boxes().get(Node.Kind.CLEARED).fill());
		paint(registry, UNSPLIT, theme, theme.boxes().get(Node.Kind.SUSPECTED).fill());
		Style unused = new Style();
		unused.setAttributeValue(CellStyleAttributes.FONT, JFaceResources.getFontRegistry().getItalic(JFaceResources.DEFAULT_FONT));
		registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, unused, DisplayMode.NORMAL, UNUSED);
		table.refresh();
	}

	private static ICellPainter wrapping() {
		return new BackgroundPainter(new PaddingDecorator(new TextPainter(true, false, 0, false, true), 3, 5, 3, 5));
	}

	private static void paint(IConfigRegistry registry, String label, Theme theme, String fill) {
		Style style = new Style();
		style.setAttributeValue(CellStyleAttributes.BACKGROUND_COLOR, Grounds.colour(fill));
		style.setAttributeValue(CellStyleAttributes.FOREGROUND_COLOR, Grounds.colour(theme.text()));
		style.setAttributeValue(CellStyleAttributes.HORIZONTAL_ALIGNMENT, HorizontalAlignmentEnum.LEFT);
		style.setAttributeValue(CellStyleAttributes.VERTICAL_ALIGNMENT, VerticalAlignmentEnum.TOP);
		registry.registerConfigAttribute(CellConfigAttributes.CELL_STYLE, style, DisplayMode.NORMAL, label);
	}
}
