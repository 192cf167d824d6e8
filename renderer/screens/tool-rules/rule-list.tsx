import { useState } from 'react';
import { Link } from 'wouter';
import type { ToolRuleRow } from '../../../core/contract/check.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';
import { useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { SideScroll } from '../../components/side-scroll.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { RoomIndex } from '../tools/room-index.tsx';
import { certificateRule, furtherRules } from './rule-words.ts';

/** What the site asks of each class of tool; a class without a rule says so. */
export function RuleList() {
  const rules = useAsk('toolRule.list', {});
  const [text, setText] = useState('');
  const slash = useSlash();
  const shown = TOOL_CLASSES.filter((each) => each.includes(text.trim().toLowerCase()));
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />} margin={<WithoutRules />}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside */}
      <div onKeyDown={walkEntries}>
        <Title
          name="Rules for tools"
          under="What the site asks of each class of tool, with the procedure it comes from. A change makes a new version."
        />
        <div className="filters no-print">
          <input
            type="search"
            aria-label="Find a class"
            aria-keyshortcuts="/"
            placeholder="Class of tool"
            ref={slash}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
        </div>
        <Asked asking={rules} what="the rules">
          {({ rows }) => <Rules rows={rows} shown={shown} />}
        </Asked>
      </div>
    </Desk>
  );
}

interface RulesProps {
  readonly rows: readonly ToolRuleRow[];
  readonly shown: readonly ToolClass[];
}

function Rules({ rows, shown }: RulesProps) {
  if (shown.length === 0) return <p className="empty">No class of tool is called so.</p>;
  const ruleOf = (each: ToolClass) => rows.find(({ data }) => data.class === each);
  return (
    <>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Class</th>
              <th scope="col">Certificate</th>
              <th scope="col">Further</th>
              <th scope="col">Counts to</th>
              <th scope="col" className="num">
                Notice <span className="unit">days</span>
              </th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((each) => (
              <Row key={each} toolClass={each} rule={ruleOf(each)} />
            ))}
          </tbody>
        </table>
      </SideScroll>
      <ExportList
        name="tool-rules"
        headings={['Class', 'Certificate', 'Further', 'Counts to', 'Notice (days)', 'Version', 'Source']}
        rows={() => Promise.resolve(shown.flatMap((each) => ruleOf(each) ?? []))}
        cells={({ version, data }) => [
          data.class,
          certificateRule(data),
          furtherRules(data).join('; '),
          data.dueAt,
          data.noticeDays,
          version,
          data.source,
        ]}
      />
    </>
  );
}

interface RowProps {
  readonly toolClass: ToolClass;
  readonly rule: ToolRuleRow | undefined;
}

function Row({ toolClass, rule }: RowProps) {
  if (rule === undefined) {
    return (
      <tr>
        <th scope="row">{toolClass}</th>
        <td colSpan={5}>
          <span className="small">The site has no rule for it. </span>
          <Link className="small" href={`/tool-rules/new/${toolClass}`} data-entry>
            Enter one<span className="unseen"> for the {toolClass}</span>
          </Link>
        </td>
      </tr>
    );
  }
  const { data, version, id } = rule;
  const further = furtherRules(data);
  return (
    <tr>
      <th scope="row">
        {toolClass}
        <div className="small">
          version {version},{' '}
          <Link className="small no-print" href={`/tool-rules/${id}/edit`} data-entry>
            edit<span className="unseen"> the rule for the {toolClass}</span>
          </Link>
        </div>
      </th>
      <td>{certificateRule(data)}</td>
      <td>
        {further.length === 0 ? (
          <span className="small">nothing further</span>
        ) : (
          <ul className="plain-list">
            {further.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        )}
      </td>
      <td>{data.dueAt}</td>
      <td className="num">{data.noticeDays}</td>
      <td className="small">{data.source}</td>
    </tr>
  );
}

function WithoutRules() {
  return (
    <section>
      <h2>What holds without a rule</h2>
      <ul className="notes small">
        <li>
          A setting asks a certificate of drive unit, gauge and hand torque wrench, and counts it to its own
          last day.
        </li>
        <li>
          A tool that was overloaded is overdue until it is calibrated or has passed a check. No rule can
          lengthen that.
        </li>
        <li>A tool that failed a check stays barred until somebody releases it.</li>
        <li>
          A hose without a rule for its age is warned of after six years from the day it was made, storage
          included (DIN 20066:2002-10, second-hand).
        </li>
        <li>Whichever limit comes first counts: days or uses, rule or certificate.</li>
      </ul>
      <p className="small">
        What is looked at between calibrations stands in the checklists, each with its own interval.
      </p>
    </section>
  );
}
