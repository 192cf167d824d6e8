import type { CheckKind } from '../../../core/contract/check.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import { checkCautions } from '../../../core/text/check-cautions.ts';

interface CheckCautionsProps {
  readonly kind: CheckKind;
  readonly classes: readonly ToolClass[];
}

/** What can hurt someone at this check, before its first step. */
export function CheckCautions({ kind, classes }: CheckCautionsProps) {
  const all = classes.flatMap((each) => checkCautions(kind, each));
  const cautions = [...new Map(all.map((caution) => [caution.text, caution])).values()];
  return (
    <section className="caution-list" aria-label="Cautions">
      <h2>Caution</h2>
      <ul>
        {cautions.map(({ text, source }) => (
          <li key={text} title={source}>
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
