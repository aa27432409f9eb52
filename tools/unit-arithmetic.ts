import ts from 'typescript';

/** A place where an amount is converted by hand. */
export interface HandConversion {
  /** Number of the line, from 1. */
  readonly line: number;
  readonly text: string;
}

/** Sizes of units: whoever multiplies by one converts. */
const SIZES: ReadonlySet<number> = new Set([
  25.4, 0.0254, 0.3048, 304.8, 645.16, 0.45359237, 453.59237, 6894.757, 6894.757293168361, 6.894757, 273.15,
  1.8, 60_000, 1e5, 1.5875, 16.387064,
]);

/** Sizes that are also counts: only beside an amount with a unit in its name do they convert. */
const ALSO_COUNTS: ReadonlySet<number> = new Set([1000, 1e-3, 60, 100, 1e6, 1e-6]);

/** A name that ends in a unit of results. */
const UNIT_NAME =
  /_(?:mm|mm2|m|kPa|bar|degC|C|percent|mm_per_min|L_per_min|kJ_per_mm|mV|kW|W|mohm|s|min|kg)$|^(?:mm|millimetres|metres|celsius|kelvins?|pascals?|kPa|bar)$/u;

/**
 * Finds the lines of a source that convert an amount by hand: a size of a unit as a factor or an addend, or a power of
 * ten beside an amount that is named by its unit.
 */
export function handConversions(name: string, text: string): readonly HandConversion[] {
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const found: HandConversion[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isBinaryExpression(node) && converts(node)) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart(file));
      found.push({ line: line + 1, text: node.getText(file) });
    }
    ts.forEachChild(node, look);
  };
  look(file);
  return found;
}

const SCALING: ReadonlySet<ts.SyntaxKind> = new Set([ts.SyntaxKind.AsteriskToken, ts.SyntaxKind.SlashToken]);
const SHIFTING: ReadonlySet<ts.SyntaxKind> = new Set([ts.SyntaxKind.PlusToken, ts.SyntaxKind.MinusToken]);

function converts({ operatorToken: { kind }, left, right }: ts.BinaryExpression): boolean {
  const sides = [left, right];
  const numbers = sides.flatMap((side) => (ts.isNumericLiteral(side) ? [Number(side.text)] : []));
  if (SHIFTING.has(kind)) return numbers.includes(273.15);
  if (!SCALING.has(kind)) return false;
  if (numbers.some((number) => SIZES.has(number))) return true;
  return numbers.some((number) => ALSO_COUNTS.has(number)) && sides.some(namesUnit);
}

/** Whether an expression is an amount that is named by its unit, through brackets, `!` and members. */
function namesUnit(node: ts.Expression): boolean {
  if (ts.isParenthesizedExpression(node) || ts.isNonNullExpression(node)) return namesUnit(node.expression);
  if (ts.isIdentifier(node)) return UNIT_NAME.test(node.text);
  if (ts.isPropertyAccessExpression(node))
    return UNIT_NAME.test(node.name.text) || namesUnit(node.expression);
  if (ts.isBinaryExpression(node)) return namesUnit(node.left) || namesUnit(node.right);
  return false;
}
