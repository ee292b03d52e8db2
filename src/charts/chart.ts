import type { SvgNode } from "./svg-node.ts";

/** A column of the table behind a chart. */
export interface TableColumn {
  readonly label: string;
  /** What one is one of; null for words. */
  readonly unit: string | null;
}

/** The same figures as a table; null is missing, never zero. */
export interface ChartTable {
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** A chart with everything that stands with it. */
export interface Chart {
  readonly title: string;
  /** One sentence that says what the chart shows and what it does not. */
  readonly sentence: string;
  readonly svg: SvgNode;
  readonly table: ChartTable;
  /** The text of each point that can be focused, in the order of focus: for live text beside the chart. */
  readonly pointTexts: readonly string[];
}

/** What every chart is given. */
export interface ChartHead {
  /** Unique on the page; begins the ids of its title and description. */
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
}
