import type { ComponentType } from 'preact';

/** What a page is handed: the job that its address names. */
export interface PageProps {
  /** Id of a saved job; undefined for a demo job. */
  readonly id: string | undefined;
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
}

/** The places of the app, in the order of the work. */
export const PLACES = [
  { place: 'plan', title: 'Plan' },
  { place: 'check', title: 'Check' },
  { place: 'set-up', title: 'Set up' },
  { place: 'run', title: 'Run' },
  { place: 'groove', title: 'Groove' },
  { place: 'shop', title: 'Shop' },
] as const;

export type Place = (typeof PLACES)[number]['place'];

/** One page of the app. */
export interface PageEntry {
  readonly place: Place;
  readonly title: string;
  /** Whether it is a page of a job, saved or demo, or of the shop. */
  readonly of: 'job' | 'shop';
  /** What its address ends with, after the job's where it is a page of one. */
  readonly end: string;
  /** Whether its heading is the title of what it shows alone. */
  readonly named?: boolean;
  /** The page that the work goes on with, by the end of its address, and what it tells. */
  readonly next?: { readonly end: string; readonly tells: string };
  /** Whether it is only for people who sign in, or for an administrator of them. */
  readonly for?: 'signed in' | 'administrator';
  readonly load: () => Promise<ComponentType<PageProps>>;
}

/** Every page, the first of a place being the one that the place leads to. */
export const PAGES: readonly PageEntry[] = [
  {
    place: 'plan',
    title: 'Bench',
    of: 'job',
    end: '',
    named: true,
    next: { end: 'supply', tells: 'does the kit carry it?' },
    load: async () => (await import('../pages/bench/page.tsx')).BenchPage,
  },
  {
    place: 'plan',
    title: 'Cost and time',
    of: 'job',
    end: 'cost',
    next: { end: 'supply', tells: 'does the kit carry it?' },
    load: async () => (await import('../pages/cost/page.tsx')).CostPage,
  },
  {
    place: 'plan',
    title: 'New job',
    of: 'shop',
    end: 'new',
    load: async () => (await import('../pages/new-job/page.tsx')).NewJobPage,
  },
  {
    place: 'check',
    title: 'Power and air',
    of: 'job',
    end: 'supply',
    next: { end: 'heat', tells: 'what does it do to the plate?' },
    load: async () => (await import('../pages/supply/page.tsx')).SupplyPage,
  },
  {
    place: 'check',
    title: 'Heat',
    of: 'job',
    end: 'heat',
    next: { end: 'hazards', tells: 'what does it ask of people?' },
    load: async () => (await import('../pages/heat/page.tsx')).HeatPage,
  },
  {
    place: 'check',
    title: 'Hazards',
    of: 'job',
    end: 'hazards',
    next: { end: 'papers', tells: 'print what the bay needs' },
    load: async () => (await import('../pages/hazards/page.tsx')).HazardsPage,
  },
  {
    place: 'check',
    title: 'Bay plan',
    of: 'job',
    end: 'bay',
    next: { end: 'papers', tells: 'print what the bay needs' },
    load: async () => (await import('../pages/bay/page.tsx')).BayPage,
  },
  {
    place: 'set-up',
    title: 'Papers',
    of: 'job',
    end: 'papers',
    next: { end: 'commission', tells: 'check the rig before the first arc' },
    load: async () => (await import('../pages/papers/page.tsx')).PapersPage,
  },
  {
    place: 'set-up',
    title: 'Commissioning',
    of: 'job',
    end: 'commission',
    next: { end: 'run', tells: 'what did the run do?' },
    load: async () => (await import('../pages/commission/page.tsx')).CommissionPage,
  },
  {
    place: 'run',
    title: 'Log',
    of: 'job',
    end: 'run',
    next: { end: 'groove', tells: 'is the groove right?' },
    load: async () => (await import('../pages/run/page.tsx')).RunPage,
  },
  {
    place: 'groove',
    title: 'Groove',
    of: 'job',
    end: 'groove',
    next: { end: 'record', tells: 'what was run, for the papers' },
    load: async () => (await import('../pages/groove/page.tsx')).GroovePage,
  },
  {
    place: 'groove',
    title: 'Record',
    of: 'job',
    end: 'record',
    next: { end: 'knowledge', tells: 'what the next plan begins from' },
    load: async () => (await import('../pages/record/page.tsx')).RecordPage,
  },
  {
    place: 'shop',
    title: 'Kit',
    of: 'shop',
    end: 'kit',
    named: true,
    load: async () => (await import('../pages/kit/page.tsx')).KitPage,
  },
  {
    place: 'shop',
    title: 'Saved jobs',
    of: 'shop',
    end: 'jobs',
    named: true,
    load: async () => (await import('../pages/jobs/page.tsx')).JobsPage,
  },
  {
    place: 'shop',
    title: 'What this shop knows',
    of: 'shop',
    end: 'knowledge',
    named: true,
    next: { end: 'new', tells: 'begin the next groove' },
    load: async () => (await import('../pages/knowledge/page.tsx')).KnowledgePage,
  },
  {
    place: 'shop',
    title: 'Gauge',
    of: 'shop',
    end: 'gauge',
    load: async () => (await import('../pages/gauge/page.tsx')).GaugePage,
  },
  {
    place: 'shop',
    title: 'People and shops',
    of: 'shop',
    end: 'people',
    named: true,
    for: 'administrator',
    load: async () => (await import('../pages/people/page.tsx')).PeoplePage,
  },
  {
    place: 'shop',
    title: 'Shops side by side',
    of: 'shop',
    end: 'company',
    named: true,
    for: 'administrator',
    load: async () => (await import('../pages/company/page.tsx')).CompanyPage,
  },
  {
    place: 'shop',
    title: 'History',
    of: 'shop',
    end: 'history',
    named: true,
    for: 'signed in',
    load: async () => (await import('../pages/history/page.tsx')).HistoryPage,
  },
  {
    place: 'shop',
    title: 'Password',
    of: 'shop',
    end: 'password',
    for: 'signed in',
    load: async () => (await import('../pages/password/page.tsx')).PasswordPage,
  },
  {
    place: 'shop',
    title: 'Glossary',
    of: 'shop',
    end: 'glossary',
    load: async () => (await import('../pages/glossary/page.tsx')).GlossaryPage,
  },
  {
    place: 'shop',
    title: 'Handbook',
    of: 'shop',
    end: 'handbook',
    load: async () => (await import('../pages/handbook/page.tsx')).HandbookPage,
  },
];
