import { Fragment, type ReactElement } from 'react';
import { Link, Redirect, Route, Switch } from 'wouter';
import { Desk, Title } from '../components/desk.tsx';
import { BeginSignIn } from '../screens/access/begin-sign-in.tsx';
import { OwnSecretPage } from '../screens/access/own-secret.tsx';
import { AtJoint } from '../screens/at-joint/at-joint.tsx';
import { FindJoint } from '../screens/at-joint/find-joint.tsx';
import { BreakoutPage } from '../screens/breakout/breakout-page.tsx';
import { ForecastsPage } from '../screens/breakout/forecasts-page.tsx';
import { PlantBreakout } from '../screens/breakout/plant-breakout.tsx';
import { BoardPage } from '../screens/campaigns/board-page.tsx';
import { EditCampaign, NewCampaign } from '../screens/campaigns/campaign-edit.tsx';
import { CampaignList } from '../screens/campaigns/campaign-list.tsx';
import { CampaignPage } from '../screens/campaigns/campaign-page.tsx';
import { ChangesPage } from '../screens/campaigns/changes-page.tsx';
import { EditJob, NewJob } from '../screens/campaigns/job-edit.tsx';
import { JobPage } from '../screens/campaigns/job-page.tsx';
import { MaterialsPage } from '../screens/campaigns/materials-page.tsx';
import { CaseList } from '../screens/cases/case-list.tsx';
import { NewCase } from '../screens/cases/case-new.tsx';
import { CasePage } from '../screens/cases/case-page.tsx';
import { RecordCheck } from '../screens/checks/check-new.tsx';
import { EditChecklist, NewChecklist } from '../screens/checks/checklist-edit.tsx';
import { ChecklistList } from '../screens/checks/checklist-list.tsx';
import { ChecklistPage } from '../screens/checks/checklist-page.tsx';
import { CustodyDesk } from '../screens/custody/custody-desk.tsx';
import { DueCalendar } from '../screens/due/due-calendar.tsx';
import { DueList } from '../screens/due/due-list.tsx';
import { EventPage } from '../screens/events/event-page.tsx';
import { RecordBreakout } from '../screens/events/record-breakout.tsx';
import { RecordTightening } from '../screens/events/record-tightening.tsx';
import { EvidencePage } from '../screens/evidence/evidence-page.tsx';
import { FrictionPage } from '../screens/friction/friction-page.tsx';
import { AuditPage } from '../screens/history/audit-page.tsx';
import { RecordPage } from '../screens/history/record-page.tsx';
import { VerifyPage } from '../screens/history/verify-page.tsx';
import { IsThis } from '../screens/identity/is-this.tsx';
import { TagSheet } from '../screens/identity/tag-sheet.tsx';
import { ImportPage } from '../screens/imports/import-page.tsx';
import { CompareSheet } from '../screens/joints/compare-sheet.tsx';
import { EditJoint, NewJoint } from '../screens/joints/joint-edit.tsx';
import { JointList } from '../screens/joints/joint-list.tsx';
import { JointPage } from '../screens/joints/joint-page.tsx';
import { EditKit, NewKit } from '../screens/kits/kit-edit.tsx';
import { KitList } from '../screens/kits/kit-list.tsx';
import { KitPage } from '../screens/kits/kit-page.tsx';
import { CyclesPage } from '../screens/leaks/cycles-page.tsx';
import { LeakList } from '../screens/leaks/leak-list.tsx';
import { VerifyFirst } from '../screens/leaks/verify-first.tsx';
import { EditClassRule, NewClassRule } from '../screens/life/class-rule-edit.tsx';
import { ClassRulesPage } from '../screens/life/class-rules-page.tsx';
import { DeviationList } from '../screens/life/deviation-list.tsx';
import { StepPage } from '../screens/life/step-page.tsx';
import { EditCompetence } from '../screens/people/competence-edit.tsx';
import { PeoplePage } from '../screens/people/people-page.tsx';
import { PersonPage } from '../screens/people/person-page.tsx';
import { ReplayPage } from '../screens/replay/replay-page.tsx';
import { RetighteningPage } from '../screens/retightening/retightening-page.tsx';
import { ScatterPage } from '../screens/scatter/scatter-page.tsx';
import { IssuedSheet } from '../screens/settings/issued-sheet.tsx';
import { SettingDesk } from '../screens/settings/setting-desk.tsx';
import { EditPlan, NewPlan } from '../screens/site/plan-edit.tsx';
import { PlansPage } from '../screens/site/plans-page.tsx';
import { EditSiteRow, NewSiteRow } from '../screens/site/site-row-edit.tsx';
import { SiteTablesPage } from '../screens/site/site-tables-page.tsx';
import { EditRule, NewRule } from '../screens/tool-rules/rule-edit.tsx';
import { RuleList } from '../screens/tool-rules/rule-list.tsx';
import { NewCertificate } from '../screens/tools/certificate-new.tsx';
import { LabelSheet } from '../screens/tools/label-sheet.tsx';
import { RoomStart } from '../screens/tools/room-start.tsx';
import { EditTool, NewTool } from '../screens/tools/tool-edit.tsx';
import { ToolList } from '../screens/tools/tool-list.tsx';
import { ToolPage } from '../screens/tools/tool-page.tsx';
import { ToolUses } from '../screens/tools/tool-uses.tsx';
import { UnitsPage } from '../screens/units/units-page.tsx';

type Params = Readonly<Record<string, string | undefined>>;

/** A page about one record: everything on it starts afresh when another record is opened. */
function about(draw: (id: string, params: Params) => ReactElement) {
  return (params: Params) => <Fragment key={params.id}>{draw(params.id ?? '', params)}</Fragment>;
}

export function Pages() {
  return (
    <Switch>
      <Route path="/">
        <Redirect to="/joints" replace />
      </Route>
      <Route path="/joints" component={JointList} />
      <Route path="/joints/new" component={NewJoint} />
      <Route path="/joints/:id">
        {about((id) => (
          <JointPage id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/edit/:field?">
        {about((id, { field }) => (
          <EditJoint id={id} field={field} />
        ))}
      </Route>
      <Route path="/joints/:id/step/:step">
        {({ id = '', step }) => <StepPage key={`${id}.${step}`} id={id} path={step} />}
      </Route>
      <Route path="/deviations" component={DeviationList} />
      <Route path="/class-rules" component={ClassRulesPage} />
      <Route path="/class-rules/new" component={NewClassRule} />
      <Route path="/class-rules/:id/edit">
        {about((id) => (
          <EditClassRule id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/compare">
        {about((id) => (
          <CompareSheet id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/setting">
        {about((id) => (
          <SettingDesk id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/record/tightening/:settingId?">
        {about((id, { settingId }) => (
          <RecordTightening jointId={id} settingId={settingId ?? null} />
        ))}
      </Route>
      <Route path="/joints/:id/record/breakout/:settingId?">
        {about((id, { settingId }) => (
          <RecordBreakout jointId={id} settingId={settingId ?? null} />
        ))}
      </Route>
      <Route path="/breakout">
        <PlantBreakout />
      </Route>
      <Route path="/joints/:id/breakout">
        {about((id) => (
          <BreakoutPage id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/scatter">
        {about((id) => (
          <ScatterPage id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/retightening">
        {about((id) => (
          <RetighteningPage id={id} />
        ))}
      </Route>
      <Route path="/joints/:id/cycles">
        {about((id) => (
          <CyclesPage id={id} />
        ))}
      </Route>
      <Route path="/leaks" component={LeakList} />
      <Route path="/leaks/verify" component={VerifyFirst} />
      <Route path="/at" component={FindJoint} />
      <Route path="/at/:id">
        {about((id) => (
          <AtJoint id={id} />
        ))}
      </Route>
      <Route path="/is-this/:id?">{({ id }) => <IsThis key={id ?? ''} id={id} />}</Route>
      <Route path="/tags/:id?">{({ id }) => <TagSheet key={id ?? ''} id={id} />}</Route>
      <Route path="/settings/:id">
        {about((id) => (
          <IssuedSheet id={id} />
        ))}
      </Route>
      <Route path="/events/:id">
        {about((id) => (
          <EventPage id={id} />
        ))}
      </Route>
      <Route path="/tool-room" component={RoomStart} />
      <Route path="/due" component={DueList} />
      <Route path="/due/calendar" component={DueCalendar} />
      <Route path="/custody" component={CustodyDesk} />
      <Route path="/cases" component={CaseList} />
      <Route path="/cases/new/:toolId?/:evidenceId?">
        {({ toolId, evidenceId }) => (
          <NewCase key={`${toolId}.${evidenceId}`} toolId={toolId} evidenceId={evidenceId} />
        )}
      </Route>
      <Route path="/cases/:id">
        {about((id) => (
          <CasePage id={id} />
        ))}
      </Route>
      <Route path="/breakout/forecasts" component={ForecastsPage} />
      <Route path="/friction" component={FrictionPage} />
      <Route path="/replay" component={ReplayPage} />
      <Route path="/plan/campaigns" component={CampaignList} />
      <Route path="/plan/campaigns/new" component={NewCampaign} />
      <Route path="/plan/campaigns/:id">
        {about((id) => (
          <CampaignPage id={id} />
        ))}
      </Route>
      <Route path="/plan/campaigns/:id/edit">
        {about((id) => (
          <EditCampaign id={id} />
        ))}
      </Route>
      <Route path="/plan/campaigns/:id/board">
        {about((id) => (
          <BoardPage id={id} />
        ))}
      </Route>
      <Route path="/plan/campaigns/:id/materials">
        {about((id) => (
          <MaterialsPage id={id} />
        ))}
      </Route>
      <Route path="/plan/campaigns/:id/changes">
        {about((id) => (
          <ChangesPage id={id} />
        ))}
      </Route>
      <Route path="/plan/campaigns/:id/jobs/new">
        {about((id) => (
          <NewJob campaignId={id} />
        ))}
      </Route>
      <Route path="/plan/jobs/:id">
        {about((id) => (
          <JobPage id={id} />
        ))}
      </Route>
      <Route path="/plan/jobs/:id/edit">
        {about((id) => (
          <EditJob id={id} />
        ))}
      </Route>
      <Route path="/kits" component={KitList} />
      <Route path="/kits/new" component={NewKit} />
      <Route path="/kits/:id">
        {about((id) => (
          <KitPage id={id} />
        ))}
      </Route>
      <Route path="/kits/:id/edit">
        {about((id) => (
          <EditKit id={id} />
        ))}
      </Route>
      <Route path="/checklists" component={ChecklistList} />
      <Route path="/checklists/new" component={NewChecklist} />
      <Route path="/checklists/:id">
        {about((id) => (
          <ChecklistPage id={id} />
        ))}
      </Route>
      <Route path="/checklists/:id/edit">
        {about((id) => (
          <EditChecklist id={id} />
        ))}
      </Route>
      <Route path="/tool-rules" component={RuleList} />
      <Route path="/tool-rules/new/:toolClass?">
        {({ toolClass }) => <NewRule key={toolClass ?? ''} toolClass={toolClass} />}
      </Route>
      <Route path="/tool-rules/:id/edit">
        {about((id) => (
          <EditRule id={id} />
        ))}
      </Route>
      <Route path="/labels/:id?">{({ id }) => <LabelSheet key={id ?? ''} id={id} />}</Route>
      <Route path="/tools" component={ToolList} />
      <Route path="/tools/new" component={NewTool} />
      <Route path="/tools/:id">
        {about((id) => (
          <ToolPage id={id} />
        ))}
      </Route>
      <Route path="/tools/:id/edit">
        {about((id) => (
          <EditTool id={id} />
        ))}
      </Route>
      <Route path="/tools/:id/uses">
        {about((id) => (
          <ToolUses id={id} />
        ))}
      </Route>
      <Route path="/tools/:id/check">
        {about((id) => (
          <RecordCheck id={id} />
        ))}
      </Route>
      <Route path="/tools/:id/certificates/new">
        {about((id) => (
          <NewCertificate id={id} />
        ))}
      </Route>
      <Route path="/import/:kind">{(params) => <ImportPage key={params.kind} kind={params.kind} />}</Route>
      <Route path="/evidence" component={EvidencePage} />
      <Route path="/verify" component={VerifyPage} />
      <Route path="/audit" component={AuditPage} />
      <Route path="/records/:id">
        {about((id) => (
          <RecordPage id={id} />
        ))}
      </Route>
      <Route path="/site-tables" component={SiteTablesPage} />
      <Route path="/site-tables/new/:path">{({ path }) => <NewSiteRow key={path} path={path} />}</Route>
      <Route path="/site-tables/:id/edit">
        {about((id) => (
          <EditSiteRow id={id} />
        ))}
      </Route>
      <Route path="/plans" component={PlansPage} />
      <Route path="/plans/new" component={NewPlan} />
      <Route path="/plans/:id/edit">
        {about((id) => (
          <EditPlan id={id} />
        ))}
      </Route>
      <Route path="/people" component={PeoplePage} />
      <Route path="/people/:id">
        {about((id) => (
          <PersonPage id={id} />
        ))}
      </Route>
      <Route path="/people/:id/competences/:competence">
        {(params) => (
          <EditCompetence
            key={`${params.id}.${params.competence}`}
            personId={params.id}
            competenceId={params.competence}
          />
        )}
      </Route>
      <Route path="/sign-in" component={BeginSignIn} />
      <Route path="/secret" component={OwnSecretPage} />
      <Route path="/units" component={UnitsPage} />
      <Route>
        <NoSuchPage />
      </Route>
    </Switch>
  );
}

function NoSuchPage() {
  return (
    <Desk indexLabel="Pages" index={<Link href="/joints">Joints</Link>}>
      <Title name="There is no such page" />
      <p>The address names a page this book does not have.</p>
    </Desk>
  );
}
