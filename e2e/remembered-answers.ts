import type { BrowserContext } from 'playwright-core';

/**
 * Workers whose answer rests on what they are asked and on nothing else, by the names the app gives them. Those of run and
 * survey read files of the page, and are asked in earnest.
 */
const REMEMBERED = ['planner', 'heat', 'cost'];

/** What the page's workers answered in this run, by what they were asked. */
const answers = new Map<string, string>();

/**
 * Lets the workers of the app answer each question once in a run: what a page of an earlier test was answered is told again,
 * message by message, to a page that asks the same. A page's worker starts with the first question that nobody has asked yet.
 */
export async function rememberAnswers(context: BrowserContext): Promise<void> {
  await context.exposeFunction('furrowRecall', (question: string) => answers.get(question) ?? null);
  await context.exposeFunction('furrowRemember', (question: string, told: string) => {
    answers.set(question, told);
  });
  await context.addInitScript(standBeforeWorkers, REMEMBERED);
}

type Message = { readonly is: string; readonly id?: number; readonly request?: unknown };

interface Memory {
  readonly furrowRecall: (question: string) => Promise<string | null>;
  readonly furrowRemember: (question: string, told: string) => Promise<void>;
}

/** Runs in the page before anything of the app; it may use nothing from outside itself. */
function standBeforeWorkers(names: readonly string[]): void {
  const memory = window as unknown as Memory;
  const Real = window.Worker;
  const MARK = '$furrow';

  /** Text of anything that may be sent to a worker here: numbers without end, gaps and lists of numbers included. */
  const written = (value: unknown): string =>
    JSON.stringify(value, (_key, part: unknown) => {
      if (part === undefined) return { [MARK]: 'undefined' };
      if (typeof part === 'number' && (!Number.isFinite(part) || Object.is(part, -0)))
        return { [MARK]: 'number', as: Object.is(part, -0) ? '-0' : String(part) };
      if (ArrayBuffer.isView(part)) {
        const bytes = new Uint8Array(part.buffer, part.byteOffset, part.byteLength);
        let text = '';
        for (let at = 0; at < bytes.length; at += 8192)
          text += String.fromCharCode(...bytes.subarray(at, at + 8192));
        return { [MARK]: part.constructor.name, as: btoa(text) };
      }
      if (part !== null && typeof part === 'object') {
        const kind = Object.getPrototypeOf(part) as object | null;
        if (kind !== Object.prototype && kind !== Array.prototype && kind !== null)
          throw new TypeError(`${part.constructor.name} is not remembered`);
      }
      return part;
    });
  const read = (text: string): Message[] => {
    const restored = (part: unknown): unknown => {
      if (part === null || typeof part !== 'object') return part;
      if (Array.isArray(part)) return part.map(restored);
      const { [MARK]: kind, as } = part as { [MARK]?: string; as?: string };
      if (kind === 'undefined') return undefined;
      if (kind === 'number') return Number(as);
      if (kind !== undefined) {
        const bytes = Uint8Array.from(atob(as ?? ''), (letter) => letter.charCodeAt(0));
        const List = (window as unknown as Record<string, new (buffer: ArrayBuffer) => unknown>)[kind]!;
        return new List(bytes.buffer);
      }
      return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, restored(value)]));
    };
    return restored(JSON.parse(text)) as Message[];
  };

  class Remembering extends EventTarget {
    readonly #name: string;
    readonly #start: () => Worker;
    #worker: Worker | undefined;
    #turns = 0;
    #ended = false;
    /** What the worker is answering, and what it told so far. */
    #asked: { readonly id: number | undefined; readonly question: string } | undefined;
    #told: Message[] = [];

    constructor(url: string | URL, options: WorkerOptions) {
      super();
      this.#name = options.name!;
      this.#start = () => new Real(url, options);
    }

    postMessage(message: Message): void {
      this.#turns += 1;
      this.#asked = undefined;
      if (message.is === 'ask') void this.#answer(message, this.#turns);
      else this.#worker?.postMessage(message);
    }

    terminate(): void {
      this.#ended = true;
      this.#worker?.terminate();
    }

    async #answer(message: Message, turn: number): Promise<void> {
      const question = this.#name + written(message.request);
      const told = await memory.furrowRecall(question);
      if (this.#ended || turn !== this.#turns) return;
      if (told === null) {
        this.#asked = { id: message.id, question };
        this.#told = [];
        this.#worker ??= this.#started();
        this.#worker.postMessage(message);
        return;
      }
      // the worker may be at an older question still
      this.#worker?.postMessage({ is: 'stop' });
      for (const part of read(told)) this.#tell({ ...part, id: message.id! });
    }

    #started(): Worker {
      const worker = this.#start();
      worker.addEventListener('message', ({ data }: MessageEvent<Message>) => {
        this.#tell(data);
        this.#hear(data);
      });
      worker.addEventListener('error', (event) => {
        event.preventDefault();
        this.dispatchEvent(new ErrorEvent('error', { message: event.message, cancelable: true }));
      });
      return worker;
    }

    #hear(message: Message): void {
      if (this.#asked === undefined || message.id !== this.#asked.id || message.is === 'progress') return;
      if (message.is === 'failure') this.#asked = undefined;
      else this.#told.push(message);
      if (message.is !== 'done' || this.#asked === undefined) return;
      void memory.furrowRemember(this.#asked.question, written(this.#told));
      this.#asked = undefined;
    }

    #tell(message: Message): void {
      this.dispatchEvent(new MessageEvent('message', { data: message }));
    }
  }

  window.Worker = new Proxy(Real, {
    construct(target, [url, options]: [string | URL, WorkerOptions | undefined]) {
      if (names.includes(options?.name ?? '')) return new Remembering(url, options!) as unknown as Worker;
      return new target(url, options);
    },
  });
}
