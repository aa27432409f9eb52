import { API_PATHS, type ShopFigures } from '@furrow/contract';
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { fetchShopFigures } from '../../api/index.ts';
import { SiteHeader } from '../../ui/site/index.ts';
import { ScrollBox } from '../../ui/table/index.ts';
import './style.css';

/** The shops of the company side by side, and what they have learned together. */
export function CompanyPage(): VNode {
  const [shops, setShops] = useState<readonly ShopFigures[]>();
  const [trouble, setTrouble] = useState<string>();
  useEffect(() => {
    void fetchShopFigures().then((reply) => {
      if (reply.ok) setShops(reply.value);
      else setTrouble(reply.failure.message);
    });
  }, []);
  return (
    <>
      <SiteHeader />
      <main class="wide-page" id="result" tabIndex={-1}>
        <p class="status" role="status">
          {shops === undefined && trouble === undefined ? 'Working out the figures of each shop.' : ''}
        </p>
        {trouble === undefined ? null : (
          <p class="notice" role="alert">
            {trouble}
          </p>
        )}
        {shops === undefined ? null : <ShopTable shops={shops} />}
        <section class="panel" aria-labelledby="together-title">
          <header class="panel-head">
            <h2 id="together-title">What the shops have learned together</h2>
          </header>
          <p>
            A summary file holds sums of what each shop has learned, no reading, setting or job of theirs. A
            new shop plans with it from its first day: <code>furrow plan JOB --knowledge FILE</code>.
          </p>
          <p>
            <a class="button" href={API_PATHS.companySummary} download="company-summary.json">
              Download the summary
            </a>
          </p>
        </section>
      </main>
    </>
  );
}

function ShopTable({ shops }: { readonly shops: readonly ShopFigures[] }): VNode {
  return (
    <section class="panel" aria-labelledby="side-by-side-title">
      <header class="panel-head">
        <h2 id="side-by-side-title">Side by side</h2>
        <p class="caption">rehearsals and invented records count nowhere</p>
      </header>
      <ScrollBox name="Shops side by side, table">
        <table class="company-table">
          <thead>
            <tr>
              <th scope="col">Shop</th>
              <th scope="col">Jobs</th>
              <th scope="col">Gauged</th>
              <th scope="col">Cut again</th>
              <th scope="col">Runs</th>
              <th scope="col">Arc</th>
              <th scope="col">Trials, jobs learned from</th>
              <th scope="col">Inside the 90 % band</th>
              <th scope="col">Drift</th>
            </tr>
          </thead>
          <tbody>
            {shops.map((each) => (
              <ShopRow key={each.shop.id} figures={each} />
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}

function ShopRow({ figures }: { readonly figures: ShopFigures }): VNode {
  const { shop, jobs, gauged_jobs, recut_jobs, recuts, runs, arc_h, knowledge, unreadable } = figures;
  return (
    <tr>
      <th scope="row">{shop.name}</th>
      <td>{jobs}</td>
      <td>
        {gauged_jobs}
        {unreadable === 0 ? null : <span class="aside"> {unreadable} cannot be read</span>}
      </td>
      <td>
        {recut_jobs} of {gauged_jobs}
        {recuts === 0 ? null : (
          <span class="aside">
            {' '}
            {recuts} stretch{recuts === 1 ? '' : 'es'}
          </span>
        )}
      </td>
      <td>{runs}</td>
      <td>
        {arc_h.toFixed(1)} h
        {figures.runs_without_arc_time === 0 ? null : (
          <span class="aside"> {figures.runs_without_arc_time} runs do not tell</span>
        )}
      </td>
      {knowledge === null ? (
        <td colSpan={3} class="aside">
          nothing learned yet: it plans by the published rows
        </td>
      ) : (
        <>
          <td>
            {knowledge.trials}, {knowledge.jobs}
            {knowledge.date === null ? null : <span class="aside"> latest {knowledge.date}</span>}
          </td>
          <td>
            {knowledge.inside_90} of {knowledge.predictions}
          </td>
          <td>
            {knowledge.drift_sum >= knowledge.drift_limit ? <strong>△ drifts. </strong> : null}
            {knowledge.drift_says}
          </td>
        </>
      )}
    </tr>
  );
}
