/** A figure with where it comes from. */
export interface StatedFigure {
  /** The figure, in the SI unit its place asks for, or a share [see place]. */
  readonly value: number;
  readonly source: string;
}

/** How far readings and settings can be trusted; each a half width that holds about 95 in 100. */
export interface CommissionInstruments {
  /** Voltmeter, share of the reading. */
  readonly voltmeterShare: StatedFigure;
  /** Voltmeter, its last digits on the volt range [V]. */
  readonly voltmeterDigits: StatedFigure;
  /** Voltmeter, its last digits on the millivolt range [V]. */
  readonly millivoltDigits: StatedFigure;
  /** Clamp meter for direct current, share of the reading. */
  readonly clampShare: StatedFigure;
  /** No-load volts of the source against its plate, share. */
  readonly noLoadShare: StatedFigure;
  /** Swing of the arc's volts that a meter cannot average out [V]. */
  readonly arcSwing: StatedFigure;
  /** Volts lost in leads against those worked out, share. */
  readonly lossShare: StatedFigure;
  /** Current of the source against its setting, share. */
  readonly currentShare: StatedFigure;
  /** Contact thermometer [K]. */
  readonly thermometer: StatedFigure;
  /** Pressure gauge [Pa]. */
  readonly pressureGauge: StatedFigure;
  /** Setting of the regulator [Pa]. */
  readonly regulator: StatedFigure;
  /** Pressure lost in hoses against that worked out, share. */
  readonly hoseShare: StatedFigure;
  /** Protractor and setting [rad]. */
  readonly protractor: StatedFigure;
  /** Tape and setting of stick-out and height [m]. */
  readonly tape: StatedFigure;
  /** Starting and stopping a watch by hand [s]. */
  readonly watch: StatedFigure;
  /** Marks of a measured length [m]. */
  readonly marks: StatedFigure;
  /** Steadiness of the carriage, share of its travel. */
  readonly travelShare: StatedFigure;
  /** Setting of the start dwell at the control [s]. */
  readonly dwellSetting: StatedFigure;
  /** Setting of the arc volts at the control [V]. */
  readonly voltsSetting: StatedFigure;
  /** Loss window of the control, share. */
  readonly lossShareOfWindow: StatedFigure;
}

const JUDGEMENT = 'judgement, no source';

/** What is taken where the shop states nothing of its own. */
export const USUAL_INSTRUMENTS: CommissionInstruments = {
  voltmeterShare: { value: 0.01, source: JUDGEMENT },
  voltmeterDigits: { value: 0.2, source: JUDGEMENT },
  millivoltDigits: { value: 0.001, source: JUDGEMENT },
  clampShare: { value: 0.03, source: JUDGEMENT },
  noLoadShare: { value: 0.05, source: JUDGEMENT },
  arcSwing: { value: 1.5, source: JUDGEMENT },
  lossShare: {
    value: 0.1,
    source: 'derived: 25 K of copper temperature either way of cold leads at 0.00393 per K',
  },
  currentShare: { value: 0.03, source: JUDGEMENT },
  thermometer: { value: 5, source: JUDGEMENT },
  pressureGauge: { value: 16e3, source: 'EN 837-1, class 1.6 on a 10 bar scale (memory)' },
  regulator: { value: 10e3, source: JUDGEMENT },
  hoseShare: { value: 0.4, source: 'derived: smooth-bore model against two published hose points' },
  protractor: { value: (2 * Math.PI) / 180, source: JUDGEMENT },
  tape: { value: 3e-3, source: JUDGEMENT },
  watch: { value: 0.4, source: JUDGEMENT },
  marks: { value: 2e-3, source: JUDGEMENT },
  travelShare: { value: 0.02, source: 'judgement, no source: 2 % of travel moves the depth by about 3 %' },
  dwellSetting: { value: 0.1, source: 'judgement, no source: set in tenths' },
  voltsSetting: { value: 0.5, source: JUDGEMENT },
  lossShareOfWindow: { value: 0.25, source: JUDGEMENT },
};
