import type { ModbusPlace } from '@furrow/server/intake';

/** One register as it is written on the command line. */
type Register = ModbusPlace['registers'][number];

const TYPES: readonly string[] = [
  'uint16',
  'int16',
  'uint32',
  'int32',
  'float32',
] satisfies Register['type'][];
/** Usual port of Modbus TCP, and the pace at which registers are read where none is given [-], [ms]. */
const PORT = 502;
const EVERY = 100;
/** Least and greatest time between two readings [ms]. */
const EVERY_LEAST = 20;
const EVERY_MOST = 60_000;

/** `NAME [UNIT]=TABLE:ADDRESS[:TYPE[:SCALE]]` */
const REGISTER =
  /^(?<name>[^=]+)=(?<table>holding|input):(?<address>\d+)(?::(?<type>\w+))?(?::(?<scale>[-+.\deE]+))?$/u;

/**
 * What is asked of a device that speaks Modbus TCP, from `modbus://HOST[:PORT][/UNIT]` and its registers; or why not, in
 * words.
 */
export function modbusPlace(
  url: URL,
  registers: readonly string[],
  every: string | undefined,
): ModbusPlace | string {
  const unit = Number(url.pathname.replace(/^\//u, '') || 1);
  if (url.hostname === '' || !Number.isInteger(unit) || unit < 0 || unit > 255)
    return 'A device is written as modbus://HOST, with its port and unit where they are not 502 and 1: modbus://192.0.2.7:1502/3';
  const interval = every === undefined ? EVERY : Number(every);
  if (!(interval >= EVERY_LEAST && interval <= EVERY_MOST))
    return `--every is a time between two readings from ${EVERY_LEAST} to ${EVERY_MOST} ms, "${every}" is none.`;
  if (registers.length === 0)
    return 'Name what is read, a --register for each: --register "voltage [V]=holding:0:uint16:0.1"';
  const read: Register[] = [];
  for (const text of registers) {
    const { name = '', table, address, type = 'uint16', scale = '1' } = REGISTER.exec(text)?.groups ?? {};
    const factor = Number(scale);
    const place = Number(address);
    if (
      name.trim() === '' ||
      !(place <= 65_535) ||
      !TYPES.includes(type) ||
      !Number.isFinite(factor) ||
      factor === 0
    )
      return `"${text.slice(0, 60)}" is no register. Accepted: NAME [UNIT]=holding|input:ADDRESS, then where needed :${TYPES.join('|')} and :SCALE.`;
    if (read.some((other) => other.name === name.trim()))
      return `Two registers are called "${name.trim()}"; each needs a name of its own.`;
    read.push({
      name: name.trim(),
      table: table as Register['table'],
      address: place,
      type: type as Register['type'],
      scale: factor,
    });
  }
  return { host: url.hostname, port: Number(url.port || PORT), unit, interval, registers: read };
}
