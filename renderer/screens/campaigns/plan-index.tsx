import { Link, useLocation } from 'wouter';
import { useAsk } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { dayOf } from '../../app/text/time.ts';

const MOST = 50;

/** Campaigns that are open, and the pages of the one that is looked at. */
export function PlanIndex({ campaignId = null }: { readonly campaignId?: string | null }) {
  const { timeZone } = useRegister();
  const [location] = useLocation();
  const campaigns = useAsk('campaign.list', { closed: false, page: 1, pageSize: MOST });
  return (
    <>
      <h2>Plan</h2>
      <ol>
        <li>
          <Link
            className="entry"
            href="/plan/campaigns"
            aria-current={location === '/plan/campaigns' ? 'page' : undefined}
          >
            <b>Campaigns</b>
            <span className="small">shutdowns and other planned work</span>
          </Link>
        </li>
        {campaigns.data?.rows.map(({ id, data }) => (
          <li key={id}>
            <Link
              className="entry"
              href={`/plan/campaigns/${id}`}
              aria-current={location === `/plan/campaigns/${id}` ? 'page' : undefined}
            >
              <b>{data.name}</b>
              <span className="small">from {dayOf(data.startsAt, timeZone)}</span>
            </Link>
            {id === campaignId && <CampaignPages id={id} location={location} />}
          </li>
        ))}
      </ol>
    </>
  );
}

const PAGES = [
  { path: 'board', words: 'Board' },
  { path: 'materials', words: 'Materials' },
  { path: 'changes', words: 'What changed' },
] as const;

function CampaignPages({ id, location }: { readonly id: string; readonly location: string }) {
  return (
    <ol>
      {PAGES.map(({ path, words }) => {
        const to = `/plan/campaigns/${id}/${path}`;
        return (
          <li key={path}>
            <Link className="entry" href={to} aria-current={location === to ? 'page' : undefined}>
              {words}
            </Link>
          </li>
        );
      })}
    </ol>
  );
}
