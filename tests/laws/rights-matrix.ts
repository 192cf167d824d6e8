/**
 * Who may ask what, entered by hand from the roles' duties and not from the program's table. One letter per role:
 * planner, keeper, engineer, technician, administrator. "anybody" needs no sign-in, "own" needs one and no role.
 * A right that hangs on a choice in the input has a row for each choice.
 */
const TEXT = `
register.state                            anybody
register.create                           anybody
access.state                              anybody
access.present                            pketa
access.stay                               own
access.begin                              anybody
access.signIn                             anybody
access.signOut                            anybody
access.changeSecret                       own
access.giveSecret                         ....a
reference.choices                         pketa
breakout.history                          pketa
breakout.forecast                         pketa
breakout.ownRecord                        pketa
forecasts.start                           pketa
forecasts.run                             pketa
forecasts.cancel                          pketa
forecasts.rows                            pketa
friction.evidence                         pketa
replay.run                                pketa
scatter.simulate                          pketa
unit.list                                 pketa
unit.save                                 p.e..
person.list                               pketa
person.save                               p...a
person.saveRoles                          ....a
competence.list                           pketa
competence.save                           ..e.a
joint.list                                pketa
joint.get                                 pketa
joint.save                                p.e..
joint.history                             pketa
joint.chart                               pketa
joint.find                                pketa
joint.lookAlikes                          pketa
joint.retightening                        pketa
joint.leaks                               pketa
leak.list                                 pketa
leak.verifyFirst                          pketa
cycles.record                             pketa
joint.standing                            pketa
joint.step, assess                        ..e..
joint.step, declare in service            p.e..
joint.step, schedule                      p.e..
joint.step, unschedule                    p.e..
joint.step, isolate                       pketa
joint.step, lift isolation                pketa
joint.step, release                       p.e..
joint.step, break                         pketa
joint.step, inspect                       pketa
joint.step, hold                          pketa
joint.step, clear hold                    ..e..
joint.step, make up                       pketa
joint.step, witness                       ..et.
joint.step, relaxation pass               pketa
joint.step, test                          pketa
joint.step, reinstate                     pketa
joint.step, enter service                 pketa
joint.step, report leak                   pketa
joint.step, close leak watch              ..e..
joint.containment                         pketa
deviation.list                            pketa
deviation.decide                          ..e..
classRule.list                            pketa
classRule.save                            ..e..
record.completeness                       pketa
joint.compareSheet                        pketa
tool.list                                 pketa
tool.get                                  pketa
tool.save                                 .k...
tool.find                                 pketa
tool.record                               pketa
tool.uses                                 pketa
tool.due                                  pketa
tool.move, issue                          .k...
tool.move, return                         pketa
tool.move, send to the laboratory         .k...
tool.move, take back from the laboratory  .k...
tool.move, quarantine                     pketa
tool.move, release from quarantine        .ke..
tool.move, scrap                          .k...
check.assess                              pketa
tool.check                                pketa
certificate.assess                        pketa
certificate.add                           .ke..
checklist.list                            pketa
checklist.save                            .ke..
toolRule.list                             pketa
toolRule.save                             .ke..
kit.list                                  pketa
kit.get                                   pketa
kit.save                                  pk...
campaign.list                             pketa
campaign.get                              pketa
campaign.save                             p.e..
campaign.materials                        pketa
job.list                                  pketa
job.get                                   pketa
job.save                                  p.e..
board.get                                 pketa
job.changes                               pketa
attachment.list                           pketa
attachment.get                            pketa
attachment.add                            pketa
batch.list                                pketa
case.preview                              pketa
case.list                                 pketa
case.get                                  pketa
case.open                                 .ke..
case.decide                               ..e..
case.close                                ..e..
setting.compute                           pketa
setting.suits                             pketa
setting.issue                             p.e..
setting.get                               pketa
setting.list                              pketa
setting.recompute                         pketa
event.recordTightening                    pketa
event.recordBreakout                      pketa
event.get                                 pketa
event.sign, did                           pketa
event.sign, witnessed                     pketa
event.sign, approved                      ..e..
event.sign, reviewed                      pke..
pass.open                                 pketa
pass.record                               pketa
draft.get                                 pketa
draft.save                                pketa
draft.drop                                pketa
history.record                            pketa
audit.list                                .ke.a
history.verify                            pketa
history.export                            ..e.a
history.progress                          pketa
history.cancel                            pketa
history.exportPart                        ..e.a
siteRow.list                              pketa
siteRow.save                              ..e..
plan.list                                 pketa
plan.save                                 ..e..
plan.approve                              ..e..
tableValue.list                           pketa
tableValue.confirm                        ..e..
import.columns                            pketa
import.preview                            pketa
import.confirm, joints                    p.e..
import.confirm, tools                     .k...
import.confirm, certificate               .ke..
import.confirm, jobs                      p.e..
`;

const LETTERS = {
  p: 'planner',
  k: 'keeper',
  e: 'engineer',
  t: 'technician',
  a: 'administrator',
} as const;

export type RoleName = (typeof LETTERS)[keyof typeof LETTERS];

export const ROLE_NAMES: readonly RoleName[] = Object.values(LETTERS);

export interface MatrixRow {
  readonly request: string;
  readonly choice: string | null;
  readonly who: 'anybody' | 'own' | readonly RoleName[];
}

export const RIGHTS_MATRIX: readonly MatrixRow[] = TEXT.trim()
  .split('\n')
  .map((line) => {
    const [, request = '', choice = null, who = ''] = /^(\S+?)(?:, (.+?))?\s+(\S+)$/.exec(line) ?? [];
    return { request, choice: choice ?? null, who: whoOf(who, line) };
  });

function whoOf(who: string, line: string): MatrixRow['who'] {
  if (who === 'anybody' || who === 'own') return who;
  if (!/^[p.][k.][e.][t.][a.]$/.test(who)) throw new Error(`matrix: ${line}`);
  return Object.entries(LETTERS).flatMap(([letter, role]) => (who.includes(letter) ? [role] : []));
}
