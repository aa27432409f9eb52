import type { QuantityKind } from './quantity-kind.ts';
import { ZERO_CELSIUS } from './si.ts';

/** One unit as the trade writes it. */
export interface UnitEntry {
  /** Spelling used when the program writes the unit. */
  readonly name: string;
  /** Other accepted spellings. */
  readonly also: readonly string[];
  /** The unit in terms the unit library knows. */
  readonly definition: string;
  /** Reading of zero in the SI unit [K]; only temperatures have one. */
  readonly offset?: number;
}

/** The units of one kind and the SI unit behind them. */
export interface UnitFamily {
  /** SI unit in terms the unit library knows. */
  readonly si: string;
  readonly units: readonly UnitEntry[];
}

/** Units that the library lacks, defined for it. */
export const TRADE_DEFINITIONS: Readonly<Record<string, string>> = {
  thou: '0.001 in',
  ipm: '1 in/min',
  // a circular mil is the area of a circle one thousandth of an inch across
  kcmil: `${Math.PI / 4000} in^2`,
  kgforce: '9.80665 N',
  // 1 m3 at 0 degC and 101.325 kPa, expanded to the reference of air flow here: 20 degC and 100 kPa
  normalcubic: `${(101325 / 100000) * ((ZERO_CELSIUS + 20) / ZERO_CELSIUS)} m^3`,
};

const length: UnitFamily = {
  si: 'm',
  units: [
    {
      name: 'mm',
      also: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
      definition: 'mm',
    },
    { name: 'cm', also: ['centimetre', 'centimetres', 'centimeter', 'centimeters'], definition: 'cm' },
    { name: 'm', also: ['metre', 'metres', 'meter', 'meters'], definition: 'm' },
    { name: 'in', also: ['"', 'inch', 'inches', 'in.'], definition: 'in' },
    { name: 'ft', also: ["'", 'foot', 'feet', 'ft.'], definition: 'ft' },
    { name: 'thou', also: ['mil', 'mils'], definition: 'thou' },
    { name: 'um', also: ['µm', 'μm', 'micron', 'microns'], definition: 'um' },
  ],
};

const speed: UnitFamily = {
  si: 'm/s',
  units: [
    {
      name: 'mm/min',
      also: ['mmpm', 'mm/minute', 'millimetres/minute', 'millimeters/minute'],
      definition: 'mm/min',
    },
    {
      name: 'in/min',
      also: ['ipm', '"/min', 'inch/min', 'inches/min', 'in/minute', 'inches/minute'],
      definition: 'ipm',
    },
    { name: 'm/min', also: ['m/minute', 'metres/minute', 'meters/minute'], definition: 'm/min' },
    { name: 'cm/min', also: ['cpm'], definition: 'cm/min' },
    { name: 'mm/s', also: ['mm/sec'], definition: 'mm/s' },
    { name: 'm/s', also: ['m/sec'], definition: 'm/s' },
    { name: 'in/s', also: ['ips', 'in/sec', '"/s'], definition: 'in/s' },
    { name: 'ft/min', also: ['fpm', "'/min", 'feet/minute'], definition: 'ft/min' },
    { name: 'm/h', also: ['m/hr'], definition: 'm/h' },
  ],
};

const pressure: UnitFamily = {
  si: 'Pa',
  units: [
    { name: 'psi', also: ['psig', 'psi(g)', 'psi gauge', 'lb/in2', 'lbf/in2'], definition: 'psi' },
    { name: 'bar', also: ['barg', 'bar(g)', 'bar gauge', 'bars'], definition: 'bar' },
    { name: 'MPa', also: ['MPa(g)', 'MPa gauge'], definition: 'MPa' },
    { name: 'kPa', also: ['kPag', 'kPa(g)', 'kPa gauge'], definition: 'kPa' },
    { name: 'Pa', also: ['pascal', 'pascals'], definition: 'Pa' },
    { name: 'mbar', also: [], definition: '0.001 bar' },
    { name: 'kgf/cm2', also: ['kg/cm2'], definition: 'kgforce/cm^2' },
  ],
};

const current: UnitFamily = {
  si: 'A',
  units: [
    { name: 'A', also: ['amp', 'amps', 'ampere', 'amperes'], definition: 'A' },
    { name: 'kA', also: [], definition: 'kA' },
    { name: 'mA', also: [], definition: 'mA' },
  ],
};

const voltage: UnitFamily = {
  si: 'V',
  units: [
    { name: 'V', also: ['volt', 'volts', 'Vdc', 'V DC'], definition: 'V' },
    { name: 'mV', also: [], definition: 'mV' },
    { name: 'kV', also: [], definition: 'kV' },
  ],
};

const time: UnitFamily = {
  si: 's',
  units: [
    { name: 's', also: ['sec', 'secs', 'second', 'seconds'], definition: 's' },
    { name: 'min', also: ['mins', 'minute', 'minutes'], definition: 'min' },
    { name: 'h', also: ['hr', 'hrs', 'hour', 'hours'], definition: 'h' },
    { name: 'ms', also: ['millisecond', 'milliseconds'], definition: 'ms' },
  ],
};

const angle: UnitFamily = {
  si: 'rad',
  units: [
    { name: 'deg', also: ['°', 'degree', 'degrees'], definition: 'deg' },
    { name: 'rad', also: ['radian', 'radians'], definition: 'rad' },
  ],
};

const area: UnitFamily = {
  si: 'm^2',
  units: [
    { name: 'mm2', also: ['mm^2', 'sq mm', 'sqmm'], definition: 'mm^2' },
    { name: 'cm2', also: ['cm^2', 'sq cm'], definition: 'cm^2' },
    { name: 'm2', also: ['m^2', 'sq m'], definition: 'm^2' },
    { name: 'in2', also: ['in^2', 'sq in', 'sq.in.'], definition: 'in^2' },
    { name: 'ft2', also: ['ft^2', 'sq ft'], definition: 'ft^2' },
    { name: 'kcmil', also: ['MCM'], definition: 'kcmil' },
  ],
};

const temperature: UnitFamily = {
  si: 'K',
  units: [
    { name: '°C', also: ['degC', 'deg C', 'C', 'celsius'], definition: 'K', offset: ZERO_CELSIUS },
    { name: '°F', also: ['degF', 'deg F', 'F', 'fahrenheit'], definition: '5/9 K', offset: 459.67 },
    { name: 'K', also: ['kelvin'], definition: 'K' },
  ],
};

/** Air flow is free air at 20 degC, 100 kPa absolute, dry; a unit of another reference is brought to it. */
const airFlow: UnitFamily = {
  si: 'm^3/s',
  units: [
    { name: 'scfm', also: ['cfm', 'ft3/min', 'ft^3/min'], definition: 'ft^3/min' },
    { name: 'L/min', also: ['lpm', 'l/min', 'NL/min ANR', 'L/min ANR'], definition: 'L/min' },
    { name: 'L/s', also: ['l/s'], definition: 'L/s' },
    { name: 'm3/min', also: ['m^3/min'], definition: 'm^3/min' },
    { name: 'm3/h', also: ['m^3/h', 'm3/hr'], definition: 'm^3/h' },
    { name: 'm3/s', also: ['m^3/s'], definition: 'm^3/s' },
    { name: 'Nm3/h', also: ['Nm^3/h'], definition: 'normalcubic/h' },
    { name: 'Nm3/min', also: ['Nm^3/min'], definition: 'normalcubic/min' },
  ],
};

const power: UnitFamily = {
  si: 'W',
  units: [
    { name: 'kW', also: ['kilowatt', 'kilowatts'], definition: 'kW' },
    { name: 'W', also: ['watt', 'watts'], definition: 'W' },
    { name: 'hp', also: ['horsepower'], definition: '550 ft lbf/s' },
  ],
};

const share: UnitFamily = {
  si: '',
  units: [{ name: '%', also: ['percent', 'pct'], definition: '0.01' }],
};

const volume: UnitFamily = {
  si: 'm^3',
  units: [
    { name: 'L', also: ['l', 'litre', 'litres', 'liter', 'liters'], definition: 'L' },
    { name: 'm3', also: ['m^3', 'cubic metre', 'cubic metres'], definition: 'm^3' },
    { name: 'gal', also: ['US gal', 'gallon', 'gallons'], definition: 'gal' },
    { name: 'ft3', also: ['ft^3', 'cu ft'], definition: 'ft^3' },
  ],
};

/** Also the slope of a source: volts lost per ampere. */
const resistance: UnitFamily = {
  si: 'ohm',
  units: [
    { name: 'mohm', also: ['mΩ', 'milliohm', 'milliohms', 'mV/A', 'V/kA'], definition: '0.001 ohm' },
    { name: 'ohm', also: ['Ω', 'ohms', 'V/A'], definition: 'ohm' },
    { name: 'uohm', also: ['µohm', 'µΩ', 'μΩ', 'microhm', 'microhms'], definition: '0.000001 ohm' },
    { name: 'V/100A', also: ['V/100 A', 'V per 100 A'], definition: '0.01 ohm' },
  ],
};

/** Every unit the reader accepts, by kind. */
export const UNIT_FAMILIES: Readonly<Record<QuantityKind, UnitFamily>> = {
  length,
  speed,
  pressure,
  current,
  voltage,
  time,
  angle,
  area,
  temperature,
  air_flow: airFlow,
  power,
  share,
  volume,
  resistance,
};
