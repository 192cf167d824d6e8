import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import ts from 'typescript';
import type { Check } from './check.ts';
import { projectFiles } from './files.ts';

const TEST_CALLS = new Set(['it', 'test']);
const BLOCK_CALLS = new Set(['it', 'test', 'describe', 'suite']);
const NOT_RUN = new Set(['skip', 'skipIf', 'runIf', 'only', 'todo', 'fixme', 'fails', 'fail']);

/** Tests that are left out, run alone, only announced, or that assert nothing. */
export const checkAssertions: Check = async (root) => {
  const faults: string[] = [];
  let looked = 0;
  for (const file of await projectFiles(root, /\.(test|spec)\.tsx?$/)) {
    const source = ts.createSourceFile(
      file,
      await readFile(join(root, file), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
    );
    const asserting = assertingFunctions(source);
    const say = (node: ts.Node, text: string) => {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      faults.push(`${file}:${line + 1} ${text}`);
    };
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node)) {
        const names = calledNames(node.expression);
        const [first = ''] = names;
        const left = names.slice(1).find((name) => NOT_RUN.has(name));
        if (BLOCK_CALLS.has(first) && left !== undefined) {
          say(node, `${names.join('.')}: a test is run or it is deleted.`);
        } else if (/^(x|f)(it|test|describe)$/.test(first)) {
          say(node, `${first}: a test is run or it is deleted.`);
        } else if (TEST_CALLS.has(first) && ts.isIdentifier(lastFunctionOwner(node))) {
          const body = node.arguments.find(
            (part) => ts.isArrowFunction(part) || ts.isFunctionExpression(part),
          );
          if (body !== undefined) {
            looked += 1;
            if (!asserts(body, asserting)) say(node, 'this test asserts nothing.');
          }
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { looked, faults };
};

/** `test.describe.only` → ['test', 'describe', 'only']; looks through calls, as in `it.each(rows)(…)`. */
function calledNames(expression: ts.Expression): string[] {
  if (ts.isIdentifier(expression)) return [expression.text];
  if (ts.isPropertyAccessExpression(expression)) {
    return [...calledNames(expression.expression), expression.name.text];
  }
  if (ts.isCallExpression(expression)) return calledNames(expression.expression);
  if (ts.isTaggedTemplateExpression(expression)) return calledNames(expression.tag);
  return [];
}

/** The outermost name of a test call: only `it(…)`, `it.each(…)(…)` hold a test, `test.describe(…)` holds others. */
function lastFunctionOwner(call: ts.CallExpression): ts.Node {
  const names = calledNames(call.expression);
  const holds = names.slice(1).every((name) => name === 'each' || name === 'for' || name === 'concurrent');
  return holds ? innermost(call.expression) : call;
}

function innermost(expression: ts.Expression): ts.Node {
  if (ts.isPropertyAccessExpression(expression) || ts.isCallExpression(expression)) {
    return innermost(expression.expression);
  }
  return ts.isTaggedTemplateExpression(expression) ? innermost(expression.tag) : expression;
}

/** Functions of the file that assert for a test that calls them. */
function assertingFunctions(source: ts.SourceFile): Set<string> {
  const bodies = new Map<string, ts.Node>();
  const collect = (node: ts.Node): void => {
    if (ts.isFunctionDeclaration(node) && node.name !== undefined) bodies.set(node.name.text, node);
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name) && node.initializer !== undefined) {
      if (ts.isArrowFunction(node.initializer) || ts.isFunctionExpression(node.initializer)) {
        bodies.set(node.name.text, node.initializer);
      }
    }
    ts.forEachChild(node, collect);
  };
  collect(source);
  const asserting = new Set<string>();
  for (let before = -1; before < asserting.size; ) {
    before = asserting.size;
    for (const [name, body] of bodies) if (asserts(body, asserting)) asserting.add(name);
  }
  return asserting;
}

function asserts(body: ts.Node, asserting: ReadonlySet<string>): boolean {
  let found = false;
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) {
      const names = calledNames(node.expression);
      // Shared helpers carry their promise in their name: expectCard(…), assertRefused(…).
      if (names.some((name) => /^(expect|assert)/.test(name)) || asserting.has(names[0] ?? '')) found = true;
    }
    if (!found) ts.forEachChild(node, visit);
  };
  visit(body);
  return found;
}
