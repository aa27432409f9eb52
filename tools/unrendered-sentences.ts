import ts from 'typescript';

/** A sentence that is put into text before it was written in the reader's units: Preact would show nothing, a template `[object Object]`. */
export interface Unrendered {
  /** Path of the file and number of the line, from 1. */
  readonly at: string;
  readonly expression: string;
}

/** Finds sentences that stand as a child in JSX, in a hole of an untagged template, or beside a `+`. */
export function unrenderedSentences(
  program: ts.Program,
  inFolder: (file: string) => boolean,
): readonly Unrendered[] {
  const checker = program.getTypeChecker();
  const found: Unrendered[] = [];
  const isSentence = (type: ts.Type): boolean =>
    type.isUnion() ? type.types.some(isSentence) : type.getProperty('say') !== undefined;
  for (const file of program.getSourceFiles()) {
    if (file.isDeclarationFile || !inFolder(file.fileName)) continue;
    const look = (node: ts.Node): void => {
      for (const expression of putIntoText(node)) {
        if (!isSentence(checker.getTypeAtLocation(expression))) continue;
        const { line } = file.getLineAndCharacterOfPosition(expression.getStart(file));
        found.push({ at: `${file.fileName}:${line + 1}`, expression: expression.getText(file) });
      }
      ts.forEachChild(node, look);
    };
    look(file);
  }
  return found;
}

/** Expressions that a node turns into text. */
function putIntoText(node: ts.Node): readonly ts.Expression[] {
  if (ts.isJsxExpression(node) && node.expression !== undefined && !ts.isJsxAttribute(node.parent))
    return [node.expression];
  if (ts.isTemplateExpression(node) && !ts.isTaggedTemplateExpression(node.parent))
    return node.templateSpans.map(({ expression }) => expression);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken)
    return [node.left, node.right];
  return [];
}
