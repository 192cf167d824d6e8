/** Steps from the campaign's start, half open: `until` is the first step no longer in it. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** A physical thing that is in one place at a time: wrench, cassette, pump, gauge, hose. */
export interface PlannedPart {
  readonly name: string;
  /** In date and not promised elsewhere. */
  readonly free: readonly Span[];
}

/** Parts that go to a joint together. Two sets may share a part. */
export interface PlannedSet {
  readonly name: string;
  /** Places in the list of parts. */
  readonly parts: readonly number[];
}

export interface PlannedCrew {
  readonly name: string;
  /** Shifts; work lies inside one of them. */
  readonly works: readonly Span[];
}

/** A set that can do the work, how long it takes with it, and the last step it may be used to. */
export interface SetOption {
  readonly set: number;
  readonly steps: number;
  readonly until: number;
}

export interface CrewOption {
  readonly crew: number;
  readonly until: number;
}

/** One half of a job, done without a pause by one crew with one set. */
export interface Operation {
  readonly key: string;
  readonly name: string;
  readonly window: Span;
  /** What a step of delay costs, above 0. */
  readonly weight: number;
  readonly area: number;
  readonly options: readonly SetOption[];
  readonly crews: readonly CrewOption[];
  readonly locked: { readonly set: number; readonly crew: number; readonly start: number } | null;
}

/** `after` begins at least so many steps after `before` has ended. */
export interface Lag {
  readonly before: number;
  readonly after: number;
  readonly steps: number;
  readonly why: string;
}

/** What is to be planned, in whole steps. */
export interface PlanningProblem {
  readonly horizon: number;
  readonly operations: readonly Operation[];
  readonly lags: readonly Lag[];
  readonly parts: readonly PlannedPart[];
  readonly sets: readonly PlannedSet[];
  readonly crews: readonly PlannedCrew[];
  /** Steps that parts and people need between two areas. */
  readonly travel: number;
  /** What a step of the last end costs beside the weights, at least 0. */
  readonly finishWeight: number;
}

export interface Placed {
  readonly key: string;
  readonly set: number;
  readonly crew: number;
  readonly start: number;
  readonly end: number;
}

export interface Plan {
  readonly placed: readonly Placed[];
  readonly unplaced: readonly string[];
}
