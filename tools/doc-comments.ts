import ts from 'typescript';
import { type DocComment, readDocComment } from './doc-comment.ts';
import { readWorkedExamples, type WorkedExample } from './worked-example.ts';

/** What a reading of public doc comments finds. */
export interface DocReading {
  /** One sentence per thing that is missing, with the name it is missing from. */
  readonly omissions: readonly string[];
  readonly examples: readonly { readonly name: string; readonly example: WorkedExample }[];
}

const UNIT = /\[[^\]]+\]/;
const UNIT_AND_RANGE = /\[[^\]]+\]\s*,\s*\S/;
const NUMERIC_ARRAY = /^(Big)?(Ui|I)nt\d+(Clamped)?Array$|^Float\d+Array$/;

/** Reads the doc comment of everything that one index file exports. `seen` keeps what another index gave already. */
export function readDocComments(
  program: ts.Program,
  indexFile: string,
  seen: Set<ts.Node> = new Set(),
): DocReading {
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(indexFile);
  const module = source && checker.getSymbolAtLocation(source);
  if (!module) return { omissions: [`${indexFile} exports nothing that could be read`], examples: [] };

  const omissions: string[] = [];
  const examples: { name: string; example: WorkedExample }[] = [];
  for (const exported of checker.getExportsOfModule(module)) {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    for (const declaration of documentedDeclarations(symbol)) {
      if (seen.has(declaration) || program.isSourceFileFromExternalLibrary(declaration.getSourceFile()))
        continue;
      seen.add(declaration);
      const name = exported.name;
      const omit = (what: string): void => void omissions.push(`${name}: ${what}`);
      const signature = signatureOf(checker, declaration);
      const comment = commentOf(declaration);
      if (!comment) omit('no doc comment');
      else if (signature) {
        checkFunction(comment, signature, omit);
        for (const example of examplesOf(comment, omit)) examples.push({ name, example });
      } else if (comment.summary === '') omit('no sentence that says what it is');
      if (!signature) checkNumbers(checker, declaration, comment, name, omissions);
    }
  }
  return { omissions, examples };
}

/** Overloads are documented one by one, and then the implementation behind them is not public. */
function documentedDeclarations(symbol: ts.Symbol): readonly ts.Declaration[] {
  const all = symbol.declarations ?? [];
  const overloads = all.filter((node) => ts.isFunctionDeclaration(node) && !node.body);
  return overloads.length > 0 ? overloads : all;
}

function commentOf(node: ts.Node): DocComment | undefined {
  const comment = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc).at(-1);
  return comment && readDocComment(comment.getText());
}

function signatureOf(checker: ts.TypeChecker, node: ts.Declaration): ts.Signature | undefined {
  if (ts.isFunctionDeclaration(node)) return checker.getSignatureFromDeclaration(node);
  if (!ts.isVariableDeclaration(node)) return undefined;
  return checker.getSignaturesOfType(checker.getTypeAtLocation(node), ts.SignatureKind.Call)[0];
}

/** A destructured parameter has no name of its own; the comment gives it one. */
function parameterNames(signature: ts.Signature): readonly (string | undefined)[] {
  return signature.parameters.map((parameter) => {
    const declared = parameter.valueDeclaration;
    const isPattern = declared && ts.isParameter(declared) && !ts.isIdentifier(declared.name);
    return isPattern ? undefined : parameter.name;
  });
}

function checkFunction(comment: DocComment, signature: ts.Signature, omit: (what: string) => void): void {
  const firstLine = comment.summary.split(/\n\s*\n/)[0]!;
  if (firstLine === '') omit('no sentence that says what it answers');
  else if (!/[.?:]$/.test(firstLine)) omit('its first sentence does not end');

  const documented = comment.tags
    .filter((tag) => tag.name === 'param')
    .map((tag) => /^(\S+)\s+-\s+([\s\S]*)$/.exec(tag.text) ?? [tag.text, tag.text.split(/\s/)[0]!, '']);
  const wanted = parameterNames(signature);
  for (const [index, name] of wanted.entries()) {
    const own = name === undefined ? documented[index] : documented.find((tag) => tag[1] === name);
    const shown = name ?? `number ${index + 1}`;
    if (!own) omit(`no @param for ${shown}`);
    else if (!UNIT.test(own[2]!)) omit(`no [unit] for the parameter ${shown}`);
    else if (!UNIT_AND_RANGE.test(own[2]!)) omit(`no range after the [unit] of the parameter ${shown}`);
  }
  for (const [index, tag] of documented.entries()) {
    if (!wanted.includes(tag[1]) && (wanted[index] !== undefined || index >= wanted.length)) {
      omit(`@param ${tag[1]} is not a parameter`);
    }
  }

  const returned = comment.tags.find((tag) => tag.name === 'returns');
  if (!returned) omit('no @returns');
  else if (!UNIT.test(returned.text)) omit('no [unit] in @returns');
  if (!comment.tags.some((tag) => tag.name === 'source' && tag.text !== '')) omit('no @source');
}

function examplesOf(comment: DocComment, omit: (what: string) => void): readonly WorkedExample[] {
  const blocks = comment.tags.filter((tag) => tag.name === 'example');
  try {
    const examples = blocks.flatMap((tag) => readWorkedExamples(tag.text));
    if (examples.length === 0) omit('no @example line with a worked value behind // =>');
    return examples;
  } catch (error) {
    omit(`an @example cannot be read: ${(error as Error).message}`);
    return [];
  }
}

/** Numeric constants, and numeric members at any depth of what is written out as a type, carry their unit. */
function checkNumbers(
  checker: ts.TypeChecker,
  declaration: ts.Declaration,
  comment: DocComment | undefined,
  name: string,
  omissions: string[],
): void {
  if (ts.isVariableDeclaration(declaration)) {
    if (
      comment &&
      isNumeric(checker, checker.getTypeAtLocation(declaration)) &&
      !UNIT.test(comment.summary)
    ) {
      omissions.push(`${name}: no [unit] in its comment`);
    }
    return;
  }
  if (!ts.isInterfaceDeclaration(declaration) && !ts.isTypeAliasDeclaration(declaration)) return;
  const walk = (node: ts.Node, path: string): void => {
    if (ts.isFunctionTypeNode(node) || ts.isMethodSignature(node)) return;
    if (!ts.isPropertySignature(node)) {
      ts.forEachChild(node, (child) => walk(child, path));
      return;
    }
    const member = `${path}.${node.name.getText()}`;
    if (isNumeric(checker, checker.getTypeAtLocation(node)) && !UNIT.test(commentOf(node)?.summary ?? '')) {
      omissions.push(`${member}: no [unit] in its comment`);
    }
    if (node.type) walk(node.type, member);
  };
  walk(declaration, name);
}

/** Number, list of numbers or table of numbers; a choice between written-out numbers is a name, not an amount. */
function isNumeric(checker: ts.TypeChecker, type: ts.Type): boolean {
  if (type.isUnionOrIntersection()) return type.types.some((part) => isNumeric(checker, part));
  if (type.flags & ts.TypeFlags.Number) return true;
  if (NUMERIC_ARRAY.test(type.symbol?.name ?? '')) return true;
  if (checker.isArrayType(type) || checker.isTupleType(type)) {
    return checker.getTypeArguments(type as ts.TypeReference).some((item) => isNumeric(checker, item));
  }
  const isObject = (type.flags & ts.TypeFlags.Object) !== 0;
  return isObject && checker.getIndexInfosOfType(type).some((info) => isNumeric(checker, info.type));
}
