/** Where a baseline comes from: what a reader must know before comparing with it. */
export interface BaselineOrigin {
  readonly id: string;
  readonly name: string;
  /** The publication, with its table. */
  readonly source: string;
  /** The years of the data, such as `2013`. */
  readonly year: string;
  /** The definition of an infection that its counts follow. */
  readonly definition: string;
  /** Whose data: country, hospitals, wards. */
  readonly population: string;
  /** The edition of the baseline. */
  readonly edition: string;
}

/** The pooled figures of one type of ward, or of one ward. */
export interface PooledRate {
  /** The type of ward, or the code of the ward, as the baseline's `by` says. */
  readonly key: string;
  /** Infections for each catheter-day (not per 1,000); null where only utilization is known. */
  readonly infectionsPerCatheterDay: number | null;
  /** Catheter-days / patient-days; null where only the rate is known. */
  readonly utilization: number | null;
  /** What a reader must know about this row; null for nothing. */
  readonly note: string | null;
}

/** Pooled rates and utilization ratios: indirect standardization by type of ward, or by ward. */
export interface PooledBaseline {
  readonly kind: "pooled";
  readonly origin: BaselineOrigin;
  readonly by: "ward-type" | "ward";
  readonly rates: readonly PooledRate[];
}

/** One category of a term, and what it adds to the sum of the model. */
export interface TermCategory {
  readonly name: string;
  /** For a term of a number: the band it stands for, from (included) to below; null is without end. */
  readonly band: { readonly from: number | null; readonly below: number | null } | null;
  /** 0 for the referent. */
  readonly coefficient: number;
  readonly standardError: number | null;
}

/** A factor of a model with its categories. */
export interface ModelTerm {
  readonly factor: string;
  readonly categories: readonly TermCategory[];
}

/**
 * A regression model. `infections` have a log link and are predicted for each catheter-day; `catheter-days` have a logit
 * link and are predicted for each patient-day.
 */
export interface ModelBaseline {
  readonly kind: "model";
  readonly origin: BaselineOrigin;
  readonly predicts: "infections" | "catheter-days";
  readonly intercept: number;
  readonly terms: readonly ModelTerm[];
}

/** Reference rates or a model, as data. */
export type Baseline = PooledBaseline | ModelBaseline;
