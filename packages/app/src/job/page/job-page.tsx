import type { ComponentChildren, VNode } from 'preact';
import { Waiting } from '../../ui/site/index.ts';
import { useOpenedJob } from './opened-job.tsx';

/** A page of the job that is open, or what it waits for. */
export function JobPage({ children }: { readonly children: ComponentChildren }): VNode {
  const opened = useOpenedJob();
  if (opened === undefined) return <Waiting text="Opening the job." />;
  if ('trouble' in opened) return <Waiting text={opened.trouble} trouble />;
  return <>{children}</>;
}
