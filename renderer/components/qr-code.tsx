import { useMemo } from 'react';
import { encode } from 'uqr';

interface QrCodeProps {
  readonly text: string;
  /** Said in place of the picture. */
  readonly label: string;
}

/** Clear space around the code in modules, as ISO/IEC 18004 asks. */
const QUIET = 4;

/** A text as a QR code at correction level Q: read with up to a quarter of it dirty or scratched. */
export function QrCode({ text, label }: QrCodeProps) {
  const { path, side } = useMemo(() => {
    const { data, size } = encode(text, { ecc: 'Q', border: 0 });
    return { path: data.map(rowPath).join(''), side: size + 2 * QUIET };
  }, [text]);
  return (
    <svg
      className="qr"
      role="img"
      aria-label={label}
      viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`}
      shapeRendering="crispEdges"
    >
      <path d={path} />
    </svg>
  );
}

/** Dark modules of one row as runs, so that no hairline shows between two of them. */
export function rowPath(row: readonly boolean[], at: number): string {
  let path = '';
  for (let start = 0; start < row.length; start++) {
    if (!row[start]) continue;
    let end = start;
    while (row[end]) end++;
    path += `M${start} ${at}h${end - start}v1h${start - end}z`;
    start = end;
  }
  return path;
}
