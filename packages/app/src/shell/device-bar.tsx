import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { fetchSession, isReached, listenReach, noteReach } from '../api/index.ts';
import { type KeptEnd, listenDrafts } from '../sheet/keep/index.ts';
import { PageLink } from '../ui/route/index.ts';
import { ownMemory, useSession } from '../ui/session/index.ts';
import { useSelected } from '../ui/store/index.ts';
import { appStanding, askForUpdate } from './app-update.ts';
import { isSentByItself, type KeptWork, keptWords, keptWork, sendKeptWork } from './kept-work.ts';
import { takeAlong } from './take-along.ts';
import { useJobBase } from './use-job-base.ts';

/** How often a server that is not reached is asked for [ms]. */
const ASK_AGAIN = 5000;
/** Pause before what was left behind by a page is sent: the page itself may be sending it [ms]. */
const SEND_AFTER = 2000;
/** Pause before what is not shown yet is asked for [ms]. */
const TAKE_AFTER = 1500;

const REACH = { get: isReached, listen: listenReach };

interface DeviceBarProps {
  /** Name of the demo job, where no saved one is shown. */
  readonly demo: string;
  /** The server is reached after it was not. */
  readonly onReachedAgain: () => void;
}

/**
 * What there is to say of this device: that the server is not reached and what is kept here until it is, what somebody has to
 * decide on, that a newer version is here. It sends what was entered meanwhile once the server is reached. Nothing is shown
 * where there is nothing to say.
 */
export function DeviceBar({ demo, onReachedAgain }: DeviceBarProps): VNode {
  const reached = useSelected(REACH, (now) => now);
  const { newer } = useSelected(appStanding, (now) => now);
  const work = useKeptWork();
  const asked = useSending(reached, work);
  useAskingAgain(reached, onReachedAgain);
  useTakingAlong(reached, demo);
  const waits = work.filter((one) => !asked.includes(one));
  return (
    <div aria-live="polite" class="device-bars">
      {reached ? null : (
        <p class="device-bar device-unreached">
          <strong>The server is not reached.</strong>{' '}
          {waits.length === 0
            ? 'What is on this device works on, and what is entered is kept here.'
            : `Kept on this device: ${keptWords(waits)}.`}{' '}
          {waits.some(isSentByItself) ? 'It is sent by itself once the server is reached.' : ''}
        </p>
      )}
      {asked.length === 0 ? null : (
        <p class="device-bar">
          <strong>To decide:</strong> somebody else saved meanwhile.{' '}
          {asked.map((one) => (
            <PageLink key={one.name} to={one.path}>
              {keptWords([one])}
            </PageLink>
          ))}
        </p>
      )}
      {newer ? (
        <p class="device-bar">
          A newer version of Furrow is here.{' '}
          <button type="button" onClick={() => location.reload()}>
            Take it up
          </button>
        </p>
      ) : null}
    </div>
  );
}

/** What waits on this device, as it changes. */
function useKeptWork(): readonly KeptWork[] {
  const [work, setWork] = useState<readonly KeptWork[]>(() => keptWork(ownMemory()));
  useEffect(() => {
    const look = (): void =>
      setWork((before) => {
        const now = keptWork(ownMemory());
        return JSON.stringify(now) === JSON.stringify(before) ? before : now;
      });
    window.addEventListener('storage', look);
    const forget = listenDrafts(look);
    return () => {
      window.removeEventListener('storage', look);
      forget();
    };
  }, []);
  return work;
}

/** Sends what waits while the server is reached, from one tab at a time; what a person has to decide on first. */
function useSending(reached: boolean, work: readonly KeptWork[]): readonly KeptWork[] {
  const [ends, setEnds] = useState<ReadonlyMap<string, KeptEnd>>(new Map());
  const open = work.filter((one) => isSentByItself(one) && ends.get(one.name) !== 'asks');
  const names = open.map(({ name }) => name).join(' ');
  useEffect(() => {
    if (!reached || names === '') return undefined;
    const send = (): void =>
      void navigator.locks.request('furrow.send', { ifAvailable: true }, async (lock) => {
        if (lock === null) return;
        const now = await sendKeptWork(ownMemory(), open);
        if (now.size > 0) setEnds((before) => new Map([...before, ...now]));
      });
    const timer = setInterval(send, SEND_AFTER);
    return () => clearInterval(timer);
  }, [reached, names]);
  return work.filter(({ name }) => ends.get(name) === 'asks');
}

/** Asks for the server until it is reached, and then who it takes this for, and whether it is a newer one. */
function useAskingAgain(reached: boolean, onReachedAgain: () => void): void {
  const away = useRef(!reached);
  useEffect(() => {
    const gone = (): void => noteReach(false);
    window.addEventListener('offline', gone);
    return () => window.removeEventListener('offline', gone);
  }, []);
  useEffect(() => {
    if (reached) {
      if (away.current) {
        onReachedAgain();
        void askForUpdate();
      }
      away.current = false;
      return undefined;
    }
    away.current = true;
    const ask = (): void => void fetchSession();
    const timer = setInterval(ask, ASK_AGAIN);
    window.addEventListener('online', ask);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', ask);
    };
  }, [reached]);
}

/** Takes along what the pages of the open job ask for, where the app is kept on this device. */
function useTakingAlong(reached: boolean, demo: string): void {
  const { kept } = useSelected(appStanding, (now) => now);
  const { id: job } = useJobBase(demo);
  const { signed_in: person } = useSession();
  const shopless = person !== null && person.shop === null;
  useEffect(() => {
    if (!kept || !reached || shopless) return undefined;
    const timer = setTimeout(() => void takeAlong(job), TAKE_AFTER);
    return () => clearTimeout(timer);
  }, [kept, reached, job, shopless]);
}
