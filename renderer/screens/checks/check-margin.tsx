import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { Unknown } from '../../components/number.tsx';
import { toolLines } from '../tools/tool-lines.ts';
import { ToolMargin } from '../tools/tool-margin.tsx';

/** What the tool may stand, at hand while it is checked, and what stands against it. */
export function CheckMargin({ tool }: { readonly tool: ToolRecord }) {
  return (
    <>
      <section>
        <h2>What it may stand</h2>
        <dl className="lines">
          {toolLines(tool.data).map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text ?? <Unknown />}</dd>
            </div>
          ))}
        </dl>
      </section>
      <ToolMargin tool={tool} />
    </>
  );
}
