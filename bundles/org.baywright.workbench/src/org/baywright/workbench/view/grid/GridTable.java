package org.baywright.workbench.view.grid;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.function.IntSupplier;

import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.presenter.grid.Cell;
import org.baywright.presenter.grid.Column;
import org.baywright.presenter.grid.Grid;
import org.baywright.presenter.grid.Row;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.view.Grounds;
import org.eclipse.nebula.widgets.nattable.NatTable;
import org.eclipse.nebula.widgets.nattable.coordinate.PositionCoordinate;
import org.eclipse.nebula.widgets.nattable.data.IDataProvider;
import org.eclipse.nebula.widgets.nattable.grid.GridRegion;
import org.eclipse.nebula.widgets.nattable.grid.data.DefaultCornerDataProvider;
import org.eclipse.nebula.widgets.nattable.grid.layer.ColumnHeaderLayer;
import org.eclipse.nebula.widgets.nattable.grid.layer.CornerLayer;
import org.eclipse.nebula.widgets.nattable.grid.layer.GridLayer;
import org.eclipse.nebula.widgets.nattable.grid.layer.RowHeaderLayer;
import org.eclipse.nebula.widgets.nattable.layer.DataLayer;
import org.eclipse.nebula.widgets.nattable.layer.event.StructuralRefreshEvent;
import org.eclipse.nebula.widgets.nattable.selection.SelectionLayer;
import org.eclipse.nebula.widgets.nattable.tooltip.NatTableContentTooltip;
import org.eclipse.nebula.widgets.nattable.ui.matcher.KeyEventMatcher;
import org.eclipse.nebula.widgets.nattable.viewport.ViewportLayer;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;

/** The table of tests and faults: the tests and what they take stay in sight, and so do the faults. */
final class GridTable {

	private static final int CELL_WIDTH = 150;
	private static final int TITLE_WIDTH = 220;
	private static final int EFFORT_WIDTH = 120;
	private static final int HEAD_HEIGHT = 46;
	private static final int ROW_HEIGHT = 24;

	private final NatTable table;
	private final SelectionLayer selection;
	private final List<DataLayer> data;
	private Theme dressed;
	private Grid grid = new Grid(List.of(), List.of(), List.of(), "");

	static {
		TableParts.load();
	}

	/** What the keyboard asks for, for the cell that is chosen. */
	interface Hears {
		void edit();

		void empty();

		void paste();
	}

	/**
	 * @param open opens a place in its editor
	 * @param hears hears what the keyboard asks for
	 */
	GridTable(Composite parent, Consumer<Span> open, Hears hears) {
		IDataProvider body = provider(() -> grid.columns().size(), () -> grid.rows().size(), (column, row) -> cell(column, row).text());
		IDataProvider faults = provider(() -> grid.columns().size(), () -> 1, (column, row) -> grid.columns().get(column).title());
		IDataProvider tests = provider(() -> 2, () -> grid.rows().size(),
				(column, row) -> column == 0 ? grid.rows().get(row).title() : grid.rows().get(row).effort());
		DataLayer cells = new DataLayer(body, CELL_WIDTH, ROW_HEIGHT);
		cells.setConfigLabelAccumulator((labels, column, row) -> {
			label(cell(column, row)).ifPresent(labels::addLabel);
		});
		selection = new SelectionLayer(cells);
		ViewportLayer viewport = new ViewportLayer(selection);
		DataLayer head = new DataLayer(faults, CELL_WIDTH, HEAD_HEIGHT);
		head.setConfigLabelAccumulator((labels, column, row) -> {
			if (grid.columns().get(column).group() >= 0) {
				labels.addLabel(GridStyle.UNSPLIT);
			}
			if (!grid.columns().get(column).used()) {
				labels.addLabel(GridStyle.UNUSED);
			}
		});
		ColumnHeaderLayer columnHeader = new ColumnHeaderLayer(head, viewport, selection);
		DataLayer left = new DataLayer(tests, TITLE_WIDTH, ROW_HEIGHT);
		left.setColumnWidthByPosition(1, EFFORT_WIDTH);
		left.setConfigLabelAccumulator((labels, column, row) -> {
			if (!grid.rows().get(row).used()) {
				labels.addLabel(GridStyle.UNUSED);
			}
		});
		RowHeaderLayer rowHeader = new RowHeaderLayer(left, viewport, selection);
		CornerLayer corner = new CornerLayer(new DataLayer(new DefaultCornerDataProvider(faults, tests)), rowHeader, columnHeader);
		data = List.of(left, head, cells);
		table = new NatTable(parent, SWT.NO_BACKGROUND | SWT.DOUBLE_BUFFERED | SWT.V_SCROLL | SWT.H_SCROLL,
				new GridLayer(viewport, columnHeader, rowHeader, corner), false);
		table.configure();
		dress(parent);
		parent.addPaintListener(event -> dress(parent));
		table.addListener(SWT.MouseDoubleClick, event -> place(event).ifPresent(open));
		table.addListener(SWT.MenuDetect, event -> choose(table.toControl(event.x, event.y)));
		// before the keys of the library, of which Enter would go to the next row first
		for (int key : new int[] { SWT.CR, SWT.KEYPAD_CR, SWT.F2 }) {
			onKey(SWT.NONE, key, hears::edit);
		}
		onKey(SWT.NONE, SWT.DEL, hears::empty);
		onKey(SWT.MOD1, 'v', hears::paste);
		new NatTableContentTooltip(table, GridRegion.BODY, GridRegion.COLUMN_HEADER, GridRegion.ROW_HEADER) {
			@Override
			protected String getText(Event event) {
				return tooltip(event);
			}
		};
	}

	private void onKey(int modifiers, int key, Runnable action) {
		table.getUiBindingRegistry().registerFirstKeyBinding(new KeyEventMatcher(modifiers, key), (table, event) -> action.run());
	}

	NatTable control() {
		return table;
	}

	void show(Grid shown) {
		Optional<Chosen> before = chosen();
		grid = shown;
		selection.clear(false);
		data.forEach(layer -> layer.resetRowHeightConfiguration(false));
		data.forEach(layer -> layer.fireLayerEvent(new StructuralRefreshEvent(layer)));
		before.ifPresent(this::choose);
	}

	/** Follows the platform's theme, which may change at any time. */
	private void dress(Composite ground) {
		Theme theme = Grounds.theme(ground);
		if (!theme.equals(dressed)) {
			dressed = theme;
			GridStyle.apply(table, theme);
		}
	}

	private Cell cell(int column, int row) {
		return grid.rows().get(row).cells().get(column);
	}

	/** The strongest thing that a cell says gives it its colour. */
	private static Optional<String> label(Cell cell) {
		return cell.marks().stream().map(Cell.Mark::verdict).min(VerdictKind::compareTo).map(VerdictKind::name);
	}

	// ---- what lies where ---------------------------------------------------------------------------------------

	/** Finds something at a point of the table: in a cell, at the head of a fault, or at the side of a test. */
	private <T> Optional<T> at(Event event, BiFunction<Integer, Integer, T> inBody, IntFunction<T> atHead,
			IntFunction<T> atSide) {
		int column = table.getColumnIndexByPosition(table.getColumnPositionByX(event.x));
		int row = table.getRowIndexByPosition(table.getRowPositionByY(event.y));
		var region = table.getRegionLabelsByXY(event.x, event.y);
		if (region == null || column < 0 || row < 0) {
			return Optional.empty();
		} else if (region.hasLabel(GridRegion.BODY)) {
			return Optional.ofNullable(inBody.apply(column, row));
		} else if (region.hasLabel(GridRegion.COLUMN_HEADER)) {
			return Optional.ofNullable(atHead.apply(column));
		}
		return region.hasLabel(GridRegion.ROW_HEADER) ? Optional.ofNullable(atSide.apply(row)) : Optional.empty();
	}

	private String tooltip(Event event) {
		return at(event, (column, row) -> cell(column, row).tooltip(), column -> about(grid.columns().get(column)),
				row -> about(grid.rows().get(row))).filter(text -> !text.isEmpty()).orElse(null);
	}

	private static String about(Column column) {
		return column.title() + (column.seen() > 0 ? "\n" + NLS.bind(GridMessages.Seen, column.seen()) : "")
				+ (column.group() >= 0 ? "\n" + GridMessages.Unsplit : "");
	}

	private static String about(Row row) {
		return row.title() + (row.effort().isEmpty() ? "" : "\n" + row.effort());
	}

	private Optional<Span> place(Event event) {
		return at(event, (column, row) -> span(cell(column, row)), column -> grid.columns().get(column).span(),
				row -> grid.rows().get(row).span());
	}

	private static Span span(Cell cell) {
		return cell.marks().isEmpty() ? Span.NONE : cell.marks().get(0).span();
	}

	/**
	 * A cell.
	 *
	 * @param row its test
	 * @param column its fault
	 */
	record Chosen(Row row, Column column) {
	}

	/** Returns the cell that was chosen last. */
	Optional<Chosen> chosen() {
		PositionCoordinate at = selection.getLastSelectedCellPosition();
		boolean there = at != null && at.getRowPosition() >= 0 && at.getRowPosition() < grid.rows().size() && at.getColumnPosition() >= 0
				&& at.getColumnPosition() < grid.columns().size();
		return there ? Optional.of(new Chosen(grid.rows().get(at.getRowPosition()), grid.columns().get(at.getColumnPosition()))) : Optional.empty();
	}

	/** The menu of the right button is about the cell under it. */
	private void choose(Point point) {
		Event event = new Event();
		event.x = point.x;
		event.y = point.y;
		this.<int[]>at(event, (column, row) -> selection.isCellPositionSelected(column, row) ? null : new int[] { column, row }, column -> null, row -> null)
				.ifPresent(cell -> selection.selectCell(cell[0], cell[1], false, false));
	}

	/** Chooses the cell of a test and a fault again after the grid was made anew. */
	private void choose(Chosen cell) {
		for (int row = 0; row < grid.rows().size(); row++) {
			for (int column = 0; column < grid.columns().size(); column++) {
				if (grid.rows().get(row).test().equals(cell.row().test()) && grid.columns().get(column).fault().equals(cell.column().fault())) {
					selection.selectCell(column, row, false, false);
					return;
				}
			}
		}
	}

	// ---- data --------------------------------------------------------------------------------------------------

	private interface Text {
		String at(int column, int row);
	}

	private static IDataProvider provider(IntSupplier columns, IntSupplier rows, Text text) {
		return new IDataProvider() {
			@Override
			public Object getDataValue(int column, int row) {
				return text.at(column, row);
			}

			@Override
			public void setDataValue(int column, int row, Object value) {
				throw new UnsupportedOperationException("the grid is read from the rules");
			}

			@Override
			public int getColumnCount() {
				return columns.getAsInt();
			}

			@Override
			public int getRowCount() {
				return rows.getAsInt();
			}
		};
	}
}
