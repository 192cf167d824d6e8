import { describe, expect, it } from 'vitest';
import { readTable } from '../../electron/service/import/table.ts';

function faultOf(text: string, delimiter: ',' | ';' | '\t' = ',') {
  const result = readTable(text, delimiter);
  return result.ok ? null : result.fault;
}

function rowsOf(text: string, delimiter: ',' | ';' | '\t' = ',') {
  const result = readTable(text, delimiter);
  if (!result.ok) throw new Error(result.fault);
  return result.table.rows;
}

describe('cells', () => {
  it('keep separators, line breaks and doubled marks inside quotation marks', () => {
    expect(rowsOf('a,b\n"1,5","say ""on"""\n"two\nlines",x\nlast,y\n')).toEqual([
      { line: 2, cells: ['1,5', 'say "on"'] },
      { line: 3, cells: ['two\nlines', 'x'] },
      { line: 5, cells: ['last', 'y'] },
    ]);
  });

  it('are separated by the sign that was chosen and no other', () => {
    expect(rowsOf('a;b\n1,5;2', ';')).toEqual([{ line: 2, cells: ['1,5', '2'] }]);
    expect(rowsOf('a\tb\n1;5\t2,5', '\t')).toEqual([{ line: 2, cells: ['1;5', '2,5'] }]);
  });

  it('that look like a formula stay text', () => {
    expect(rowsOf('a,b\n=1+1,@SUM(A1)')[0]?.cells).toEqual(['=1+1', '@SUM(A1)']);
  });

  it('count their lines through blank lines, blank rows and any line ending', () => {
    expect(rowsOf('a,b\r\n\r\n,\r\n1,2\r\n')).toEqual([{ line: 4, cells: ['1', '2'] }]);
    expect(rowsOf('a,b\r1,2\r')).toEqual([{ line: 2, cells: ['1', '2'] }]);
  });
});

describe('a file that is no table', () => {
  it('names the line of a quotation mark that is never closed', () => {
    expect(faultOf('a,b\n1,2\n3,"4\n5,6\n')).toMatch(
      /^Line \d+: a quotation mark was opened and never closed/,
    );
  });

  it('names the line of a quotation mark in the middle of a cell', () => {
    expect(faultOf('a,b\n1,2\n3,4" pipe\n')).toMatch(
      /^Line 3: a quotation mark stands where none is allowed/,
    );
    expect(faultOf('a,b\n1,2\n3,"4" pipe\n')).toMatch(
      /^Line 3: a quotation mark stands where none is allowed/,
    );
  });

  it('says which separator the heading line seems to have', () => {
    expect(faultOf('tag;unit;size\nJ-1;U;8')).toBe(
      'Cells were to be separated by comma, but the heading line holds none and has semicolon signs: choose the separator of this file',
    );
  });

  it('names headings that stand twice or are blank', () => {
    expect(faultOf('tag,unit,Tag \nJ-1,U,J-2')).toBe(
      'Line 1: the heading "tag" stands over columns 1 and 3; each heading may stand once',
    );
    expect(faultOf('tag,,unit\nJ-1,x,U')).toBe('Line 1: column 2 has no heading');
  });

  it('needs a row below the headings', () => {
    expect(faultOf('tag,unit\n\n')).toBe('The file has a heading line but no rows');
    expect(faultOf('  \n')).toMatch(/^The file holds no text/);
  });
});
