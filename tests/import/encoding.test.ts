import { describe, expect, it } from 'vitest';
import { bytesOf } from './files.ts';

const TEXT =
  'tag,unit,flange standard,size,class,facing,location\nJ-1,Süd,ASME B16.5,8,300,raised face,Kühler – 5 °C\n';

/** Bytes of windows-1252 (the letters used here lie at their Latin-1 places, the dash at 0x96). */
const windows1252 = Buffer.from(TEXT.replace('–', '\u0096'), 'latin1');
const utf16 = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(TEXT, 'utf16le')]);

function locationOf(bytes: Uint8Array, encoding: 'utf-8' | 'windows-1252' | 'utf-16le') {
  const result = bytesOf('joints', bytes, { options: { encoding } });
  expect(result.report.fileFault).toBeNull();
  return result.kind === 'joints' ? result.records[0]?.data.location : undefined;
}

function faultOf(bytes: Uint8Array, encoding: 'utf-8' | 'windows-1252' | 'utf-16le') {
  const { report, newUnits } = bytesOf('joints', bytes, { options: { encoding } });
  expect(report).toMatchObject({ good: 0, added: 0, rows: 0 });
  expect(newUnits).toEqual([]);
  return report.fileFault;
}

describe('a file in the encoding that was chosen', () => {
  it('is read letter by letter in all three', () => {
    expect(locationOf(Buffer.from(TEXT), 'utf-8')).toBe('Kühler – 5 °C');
    expect(locationOf(windows1252, 'windows-1252')).toBe('Kühler – 5 °C');
    expect(locationOf(utf16, 'utf-16le')).toBe('Kühler – 5 °C');
  });

  it('may begin with a byte order mark, which is no part of the first heading', () => {
    expect(locationOf(Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(TEXT)]), 'utf-8')).toBe(
      'Kühler – 5 °C',
    );
    expect(locationOf(Buffer.from(TEXT, 'utf16le'), 'utf-16le')).toBe('Kühler – 5 °C');
  });
});

describe('a file in another encoding than chosen', () => {
  it('names line and byte of the first letter that is not UTF-8, and the choices', () => {
    const heading = TEXT.indexOf('\n') + 1;
    const offset = windows1252.indexOf(0xfc);
    expect(offset).toBeGreaterThan(heading);
    expect(faultOf(windows1252, 'utf-8')).toBe(
      `Line 2, byte ${offset} (0xfc) is not valid UTF-8: choose the encoding it was saved in; the choices are utf-8, windows-1252 and utf-16le`,
    );
  });

  it('finds a broken byte behind valid letters of two and three bytes', () => {
    const bytes = Buffer.concat([Buffer.from('tag,unit\nü€,'), Buffer.from([0xc3, 0x28])]);
    expect(faultOf(bytes, 'utf-8')).toMatch(/^Line 2, byte 15 \(0xc3\)/);
  });

  it('finds a letter cut off at the end of the file', () => {
    expect(faultOf(Buffer.from('tag,unit\na,ü').subarray(0, -1), 'utf-8')).toMatch(
      /^Line 2, byte 11 \(0xc3\)/,
    );
  });

  it('refuses UTF-8 read as windows-1252, which would turn every accent into two wrong letters', () => {
    expect(faultOf(Buffer.from(TEXT), 'windows-1252')).toMatch(/valid UTF-8, but windows-1252 was chosen/);
  });

  it('refuses bytes that windows-1252 has no letter for', () => {
    expect(faultOf(Buffer.from([0x74, 0x81, 0xfc]), 'windows-1252')).toMatch(
      /^Byte 1 stands for no character/,
    );
  });

  it('refuses UTF-16 read as UTF-8 and the other way round', () => {
    expect(faultOf(utf16, 'utf-8')).toMatch(/mark of UTF-16, but utf-8 was chosen/);
    expect(faultOf(Buffer.from(TEXT, 'utf16le'), 'utf-8')).toMatch(/^Byte 1 is zero/);
    expect(faultOf(Buffer.from('tag,unit'), 'utf-16le')).toMatch(/does not look like UTF-16/);
    expect(faultOf(Buffer.from([0xfe, 0xff, 0, 0x74]), 'utf-16le')).toMatch(/high byte first/);
  });

  it('refuses UTF-16 that was cut short', () => {
    expect(faultOf(utf16.subarray(0, -1), 'utf-16le')).toMatch(/has an even number/);
    expect(faultOf(Buffer.from([0x74, 0x00, 0x00, 0xd8]), 'utf-16le')).toMatch(/half of a pair is missing/);
  });
});

describe('a file that is no text', () => {
  it('is named for what it is', () => {
    expect(faultOf(Buffer.from([0x50, 0x4b, 0x03, 0x04, 0x14, 0x00]), 'utf-8')).toMatch(
      /^This is a spreadsheet file/,
    );
    expect(faultOf(Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), 'windows-1252')).toMatch(/older binary kind/);
    expect(faultOf(Buffer.from('%PDF-1.7'), 'utf-8')).toMatch(/^This is a PDF file/);
    expect(faultOf(Buffer.from('tag,\0unit'), 'utf-8')).toMatch(/^Byte 4 is zero/);
  });

  it('may be empty, and says so', () => {
    expect(faultOf(Buffer.alloc(0), 'utf-8')).toMatch(/^The file is empty/);
    expect(faultOf(Buffer.from([0xef, 0xbb, 0xbf, 0x0a, 0x0a]), 'utf-8')).toMatch(/^The file holds no text/);
  });
});
