import { Link } from 'wouter';
import { rolesInWords } from '../../../core/access/roles.ts';
import type { ClassRuleData, ClassRuleRow } from '../../../core/contract/life.ts';
import { requiredFields } from '../../../core/record/fields.ts';
import { useAsk } from '../../app/ask.ts';
import { counted } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { EvidenceIndex } from '../evidence/evidence-index.tsx';

/** What follows from the class of a joint: the site's own classes, and the three the program starts with. */
export function ClassRulesPage() {
  const rules = useAsk('classRule.list', {});
  return (
    <Desk indexLabel="Evidence" index={<EvidenceIndex />}>
      <Title
        name="Classes of joints"
        under="What follows from a joint’s class at this site. What comes with the program is an assumption to start from."
      />
      <p>
        <Link className="quiet" href="/class-rules/new">
          Add a class
        </Link>
      </p>
      <Asked asking={rules} what="the classes">
        {({ rows }) => rows.toReversed().map((row) => <Rule key={row.id ?? row.data.name} row={row} />)}
      </Asked>
    </Desk>
  );
}

function Rule({ row }: { readonly row: ClassRuleRow }) {
  const { data } = row;
  return (
    <section aria-label={`Class ${data.name}`}>
      <h2>
        {data.name}
        {data.name !== data.level && <span className="small"> {data.level}</span>}
      </h2>
      <p className="small">
        {row.origin === 'shipped' ? (
          'Comes with the program; it is not edited.'
        ) : (
          <>
            Version {row.version}, {counted(row.joints, 'joint')}
            {data.retired && ', retired: given to no further joint'}.{' '}
            <Link href={`/class-rules/${row.id}/edit`}>
              Edit<span className="unseen"> class {data.name}</span>
            </Link>
          </>
        )}
      </p>
      <dl className="facts">
        {outcomes(data).map(([what, words]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <p className="small">Source: {data.source}</p>
    </section>
  );
}

function outcomes(data: ClassRuleData): [string, string][] {
  const { leakTest, retightening, fields, completeRecord } = data;
  const depth = fields === null ? requiredFields(data.level).length : fields.length;
  const passes = [
    ...(retightening.afterDwell ? [`pass after a dwell of ${retightening.dwell} h`] : []),
    ...(retightening.duringStartUp ? ['pass during start-up'] : []),
    ...(retightening.words === '' ? [] : [retightening.words]),
  ];
  const test = leakTest.needed
    ? [
        'needed',
        ...(leakTest.methods.length === 0 ? ['by any method'] : [`by ${leakTest.methods.join(', ')}`]),
      ]
    : ['not asked for'];
  return [
    [
      'Record',
      `${counted(depth, 'field')} required${completeRecord ? '; complete before it is reinstated' : ''}`,
    ],
    ['Witnessed', share(data.witnessPercent)],
    ['Load measured', share(data.loadCheckPercent)],
    ['Leak test', [...test, ...(leakTest.words === '' ? [] : [leakTest.words])].join(', ')],
    ['Retightening', passes.length === 0 ? 'not asked for' : passes.join(', ')],
    ['Level of the technician', data.technicianLevel || 'not asked for'],
    [
      'Signs',
      data.signs.length === 0
        ? 'as usual'
        : data.signs.map(({ step, roles }) => `${step}: ${rolesInWords(roles)}`).join('; '),
    ],
  ];
}

const share = (percent: number) => (percent === 0 ? 'none asked for' : `${percent} % of the tightenings`);
