import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import ts from 'typescript';
import type { Check } from './check.ts';
import { readExample } from './example.ts';
import { projectFiles } from './files.ts';

/** The contract is schemas, each described where it is defined; its few helpers compute nothing. */
const DESCRIBED_OTHERWISE = /^core\/contract\//;

/** Results that are one computed value: they owe the reader their equation. */
const COMPUTES = /^(Outcome<)?(number|readonly \[number, number\])>?( \| null)?$/;

const NUMBER = /^(readonly )?number(\[\])?( \| null)?$/;

const UNITS =
  /(^|[\s,;:(])(m|mm|m²|m³|N|Pa|N·m|N\/m|N·m\/Pa|rad|°|degrees|°C|K|1\/K|1|s|h|inch|1\/inch|%|unit|units|whole|any)(?=$|[\s,;:.)])/;
const RANGE =
  /\b(above|below|at least|at most|between|any|whole|finite|either sign|rising|not (?:all )?equal)\b|\d to \d|−∞/;

type Documented = ts.FunctionDeclaration | ts.ArrowFunction | ts.FunctionExpression;

/** A function that core offers, with its comment. */
export interface CoreFunction {
  readonly file: string;
  readonly line: number;
  readonly name: string;
  readonly node: Documented;
  readonly comment: ts.JSDoc | null;
}

/** Every exported function of core says what it does, its equation, units, ranges, an example and its source. */
export const checkDocstrings: Check = async (root) => {
  const functions = await coreFunctions(root);
  const faults = functions.flatMap((one) =>
    faultsOf(one).map((fault) => `${one.file}:${one.line} ${one.name}: ${fault}`),
  );
  return { looked: functions.length, faults };
};

export async function coreFunctions(root: string): Promise<CoreFunction[]> {
  const files = (await projectFiles(root, /^core\/.*(?<!\.test)\.ts$/)).filter(
    (file) => !DESCRIBED_OTHERWISE.test(file),
  );
  const found: CoreFunction[] = [];
  for (const file of files) {
    const text = await readFile(join(root, file), 'utf8');
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
    for (const { name, node, owner } of source.statements.flatMap(exportedFunctions)) {
      const { line } = source.getLineAndCharacterOfPosition(owner.getStart());
      found.push({ file, line: line + 1, name, node, comment: commentOf(owner) });
    }
  }
  return found;
}

function exportedFunctions(
  statement: ts.Statement,
): { name: string; node: Documented; owner: ts.Statement }[] {
  const modifiers = ts.canHaveModifiers(statement) ? (ts.getModifiers(statement) ?? []) : [];
  if (!modifiers.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
  if (ts.isFunctionDeclaration(statement)) {
    return [{ name: statement.name?.text ?? 'default', node: statement, owner: statement }];
  }
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
    initializer !== undefined && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
      ? [{ name: name.getText(), node: initializer, owner: statement }]
      : [],
  );
}

function commentOf(statement: ts.Statement): ts.JSDoc | null {
  return ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc).at(-1) ?? null;
}

/** Text of a tag or comment, its lines joined. */
export function plainText(comment: string | ts.NodeArray<ts.JSDocComment> | undefined): string {
  return (ts.getTextOfJSDocComment(comment) ?? '').replace(/\s+/g, ' ').trim();
}

export function tagTexts(comment: ts.JSDoc, name: string): string[] {
  return (comment.tags ?? [])
    .filter(({ tagName }) => tagName.text === name)
    .map((tag) => plainText(tag.comment));
}

function faultsOf({ node, comment }: CoreFunction): string[] {
  if (comment === null) return ['has no comment.'];
  const text = plainText(comment.comment);
  const result = node.type?.getText() ?? '';
  const faults: string[] = [];
  const [sentence = ''] = text.split('Equation:');
  if (!/^[A-Z‘“"].*\.( |$)/.test(sentence)) faults.push('no sentence says what it does.');
  if (COMPUTES.test(result) && !/\bEquation: \S/.test(text))
    faults.push('no Equation, though it gives a number.');
  faults.push(...parameterFaults(node, comment));
  const [returns = ''] = [...tagTexts(comment, 'returns'), ...tagTexts(comment, 'return')];
  if (result !== 'void' && returns === '') faults.push('no @returns.');
  if (/\| null$/.test(result) && returns !== '' && !/\bnull\b/.test(returns)) {
    faults.push('@returns does not say when it is null.');
  }
  const examples = tagTexts(comment, 'example');
  if (examples.length === 0) faults.push('no @example.');
  for (const example of examples) {
    if (readExample(example) === null) faults.push(`@example gives no value to hold it to: ${example}`);
  }
  if (!tagTexts(comment, 'source').some((source) => source !== '')) faults.push('no @source.');
  return faults;
}

function parameterFaults(node: Documented, comment: ts.JSDoc): string[] {
  const tags: ts.JSDocParameterTag[] = [...(comment.tags ?? [])].filter(ts.isJSDocParameterTag);
  const faults = node.parameters.flatMap((parameter, index): string[] => {
    // A parameter that is taken apart has no name of its own: its place in the list decides.
    const named = ts.isIdentifier(parameter.name)
      ? tags.find((tag) => tag.name.getText() === parameter.name.getText())
      : tags[index];
    const name = ts.isIdentifier(parameter.name) ? parameter.name.text : `parameter ${index + 1}`;
    const text = plainText(named?.comment);
    if (text === '') return [`no @param for ${name}.`];
    if (!NUMBER.test(parameter.type?.getText() ?? '')) return [];
    return [
      ...(UNITS.test(text) ? [] : [`@param ${name} names no unit.`]),
      ...(RANGE.test(text) ? [] : [`@param ${name} names no range.`]),
    ];
  });
  return tags.length > node.parameters.length ? [...faults, 'more @param than parameters.'] : faults;
}
