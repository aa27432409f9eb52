import type { ListedPaper, PaperChoices, PaperList } from '@furrow/contract';
import type { VNode } from 'preact';
import { type PapersOf, paperPage, paperPath } from '../../api/index.ts';
import { FillButton } from './fill-button.tsx';
import { printedWords } from './printed-words.ts';

interface PaperTableProps {
  readonly list: PaperList;
  readonly of: PapersOf;
  readonly choices: PaperChoices;
  /** Page that is shown beside the list. */
  readonly shown: string;
  readonly onShow: (page: string) => void;
  /** Is told which file is handed out, before it is: the paper names who released it. */
  readonly onPrinted: (file: string) => Promise<void>;
  readonly onTrouble: (trouble: string) => void;
}

/** Papers that a readings file fills in. */
const FILLED: ReadonlySet<string | null> = new Set(['run-record', 'groove-report']);

/** Every paper and drawing, what became of it, and what can be done with it. */
export function PaperTable(props: PaperTableProps): VNode {
  const { papers } = props.list;
  return (
    <>
      <section class="panel" aria-labelledby="papers-title">
        <header class="panel-head">
          <h2 id="papers-title">Papers</h2>
        </header>
        <ul class="paper-rows">
          {papers
            .filter(({ page }) => page !== null)
            .map((paper) => (
              <PaperRow key={paper.file} paper={paper} {...props} />
            ))}
        </ul>
      </section>
      <section class="panel" aria-labelledby="drawings-title">
        <header class="panel-head">
          <h2 id="drawings-title">Drawings</h2>
          <p class="caption">at full size, for programs that measure in them</p>
        </header>
        <ul class="paper-rows">
          {papers
            .filter(({ page }) => page === null)
            .map((paper) => (
              <PaperRow key={paper.file} paper={paper} {...props} />
            ))}
        </ul>
      </section>
    </>
  );
}

function PaperRow({
  paper,
  of,
  choices,
  shown,
  onShow,
  onPrinted,
  onTrouble,
}: PaperTableProps & { readonly paper: ListedPaper }): VNode {
  const { file, title, page, wanting, printed } = paper;
  const superseded = printed?.superseded === true;
  const print = async (): Promise<void> => {
    // a window opened later than the press would be taken for an unwanted one
    const sheet = window.open('', '_blank');
    await onPrinted(file);
    sheet?.addEventListener('load', () => sheet.print());
    sheet?.location.replace(paperPage(of, page ?? '', choices));
  };
  const handOut = async (): Promise<void> => {
    await onPrinted(file);
    const link = document.createElement('a');
    link.href = paperPath(of, file, choices);
    link.download = file;
    link.click();
  };
  return (
    <li class={`paper-row${page !== null && page === shown ? ' paper-shown' : ''}`}>
      <div class="paper-name">
        <strong>{title}</strong>
        <span class="aside">
          {printedWords(paper)}
          {superseded ? (
            <>
              {' '}
              <span class="superseded">
                <span aria-hidden="true">△ </span>superseded
              </span>
            </>
          ) : null}
        </span>
      </div>
      {wanting !== null ? null : (
        <div class="row-actions">
          {page === null ? null : (
            <>
              <button
                type="button"
                aria-label={`Show ${title}`}
                aria-pressed={page === shown}
                onClick={() => onShow(page)}
              >
                Show
              </button>
              <button type="button" aria-label={`Print ${title}`} onClick={() => void print()}>
                Print
              </button>
            </>
          )}
          {FILLED.has(page) ? (
            <FillButton
              of={of}
              file={file}
              title={title}
              choices={choices}
              onFilled={() => onPrinted(file)}
              onTrouble={onTrouble}
            />
          ) : null}
          <a
            class="button"
            href={paperPath(of, file, choices)}
            download={file}
            aria-label={`Download ${title}`}
            onClick={(event) => {
              event.preventDefault();
              void handOut();
            }}
          >
            {page === null ? (file.split('.').at(-1) ?? '').toUpperCase() : 'PDF'}
          </a>
        </div>
      )}
    </li>
  );
}
