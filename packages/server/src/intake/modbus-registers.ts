/** A reading that a device keeps in its registers. */
export interface ModbusRegister {
  /** Name of the reading, with its unit. */
  readonly name: string;
  /** Address of its first register, from 0 [-]. */
  readonly address: number;
  readonly table: 'holding' | 'input';
  /** How it is kept; two registers hold the upper half first. */
  readonly type: 'uint16' | 'int16' | 'uint32' | 'int32' | 'float32';
  /** What the number read is multiplied by [-]. */
  readonly scale: number;
}

/** Registers that are read at once. */
export interface RegisterBlock {
  readonly table: ModbusRegister['table'];
  readonly start: number;
  readonly count: number;
  readonly registers: readonly ModbusRegister[];
}

/** Registers of one answer at most: the protocol's own bound [-]. */
const COUNT_MOST = 125;
/** Registers that nobody asked for are read as well up to this many, which is cheaper than asking twice [-]. */
const GAP_MOST = 8;

function widthOf({ type }: ModbusRegister): number {
  return type === 'uint16' || type === 'int16' ? 1 : 2;
}

/** Gathers registers into as few requests as are sensible. */
export function registerBlocks(registers: readonly ModbusRegister[]): readonly RegisterBlock[] {
  const blocks: RegisterBlock[] = [];
  const sorted = [...registers].sort((a, b) => a.table.localeCompare(b.table) || a.address - b.address);
  for (const register of sorted) {
    const last = blocks.at(-1);
    const end = register.address + widthOf(register);
    const fits =
      last !== undefined &&
      last.table === register.table &&
      register.address - (last.start + last.count) <= GAP_MOST &&
      end - last.start <= COUNT_MOST;
    if (fits) {
      const count = Math.max(last.count, end - last.start);
      blocks[blocks.length - 1] = { ...last, count, registers: [...last.registers, register] };
    } else {
      const { table, address } = register;
      blocks.push({ table, start: address, count: widthOf(register), registers: [register] });
    }
  }
  return blocks;
}

/** What a register says, out of the bytes of its block; null for what is no number. */
export function registerValue(bytes: Buffer, start: number, register: ModbusRegister): number | null {
  const at = 2 * (register.address - start);
  const read = {
    uint16: () => bytes.readUInt16BE(at),
    int16: () => bytes.readInt16BE(at),
    uint32: () => bytes.readUInt32BE(at),
    int32: () => bytes.readInt32BE(at),
    float32: () => bytes.readFloatBE(at),
  }[register.type]();
  // 0.1 V times 415 is 41.5, not 41.500000000000007
  const value = Number((read * register.scale).toPrecision(9));
  return Number.isFinite(value) ? value : null;
}
