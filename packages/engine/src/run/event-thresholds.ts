/**
 * When something in a log is an event: every threshold in one place, with its reason. Where no source is named it is a
 * judgement; shares are of what is usual in this log or set by its plan, so that no rig has to fit a number of ours.
 */

// --- arc-outs, shorts, starts

/** Loss window where no job names one [s]: a usual setting (common practice, no source). */
export const LOSS_WINDOW = 0.4;
/** Shares of the loss window from which a short is more than a rough arc, and a touch at a start is one [-]: a quarter of what stops the carriage. */
export const SHORT_SHARE = 0.25;
/** A short shows in three rows [intervals]: two may each have met a touch that is too brief to matter. */
export const SHORT_INTERVALS = 2.5;
/** Time after a strike in which the arc is not yet steady, beside the dwell [s]: its first volts would be called a drift. */
export const SETTLING = 0.5;

// --- where a pass begins and ends

/** Least arc time of a pass, below which it was a try to strike [s]. */
export const PASS_LEAST = 1;
/** Break after which a new pass begins where nothing tells the way [s]: longer than changing an electrode, shorter than cleaning a layer. */
export const PAUSE_BLIND = 180;
/** Break after which a new pass begins in any case [s]: no electrode takes half an hour. */
export const PAUSE_MOST = 1800;
/** Least time in which an electrode can be changed [s]: no hand is quicker. */
export const CHANGE_TIME = 8;
/** Share of an electrode that is burnt at least when it is changed [-]: wear is known to 20 %, and a first one may be begun. */
export const CHANGE_FROM = 0.5;

// --- logger and clock

/** Times the usual interval between rows from which the logger was silent [-]: jitter and one lost row are none. */
export const GAP_INTERVALS = 3.5;
/** Least silence that is told [s]: shorter than any loss window, so that no arc-out hides in it. */
export const GAP_LEAST = 0.2;
/** Least time for which a reading stands still before it is called stale [s]; how unlikely that is decides beside it. */
export const STALE_TIME = 0.5;
/** A jump of the position within one row that no carriage makes [m]. */
export const POSITION_JUMP = 0.05;
/** Rows after which such a jump is a new zero, not a wild reading [-]. */
export const POSITION_ROWS = 5;

// --- carriage

/** Share of the usual travel below which the carriage stands [-]. */
export const STALL_SHARE = 0.2;
/** Way over time is looked at over this long where only the position is read [s]: a resolution of a millimetre at usual travel. */
export const SPEED_TIME = 0.4;
/** Wheel and rail are compared over this long [s]. */
export const SLIP_TIME = 1;
/** Share by which they differ where the wheel slips [-]. */
export const SLIP_SHARE = 0.15;
/** Least way by which they differ [m]: what a readout rounds is none. */
export const SLIP_WAY = 0.003;
/** Share of the known length by which the wheel may be off before it slipped [-]: wear of a wheel and a tape's error are less. */
export const WHEEL_OFF = 0.05;

// --- feed and air

/** Share of the usual feed below which it has stopped [-]. */
export const FEED_SHARE = 0.15;
/** Least time without feed that is told [s]: a feed hunts about its mean. */
export const FEED_TIME = 1;
/** Share of the usual air, while flowing, below which it is low [-]. */
export const AIR_SHARE = 0.85;
/** Least time of low air that is told [s]: a gauge swings when the valve opens. */
export const AIR_TIME = 0.5;

// --- levels

/** Share of the set current that a level may be off [-]: what sources and shunts keep. */
export const CURRENT_OFF = 0.05;
/** Share of the set voltage that a level may be off, where the job has no window [-]. */
export const VOLTAGE_OFF = 0.05;

// --- stretches of the seam

/** Least length of an ungouged, a shallow and a deep stretch that is told [m]: what a grinder takes in passing is less. */
export const STRETCH_LEAST = { ungouged: 0.002, shallow: 0.01, deep: 0.004 } as const;
