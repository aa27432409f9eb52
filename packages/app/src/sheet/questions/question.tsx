import type { Issue } from '@furrow/engine';
import type { ComponentChildren, VNode } from 'preact';
import './style.css';

interface QuestionFormProps {
  readonly name: string;
  /** What pressing the button does. */
  readonly submit: string;
  /** What becomes of all that is not asked here. */
  readonly aside: string;
  readonly onSubmit: () => void;
  readonly children: ComponentChildren;
}

/** The few questions that a file begins with. */
export function QuestionForm({ name, submit, aside, onSubmit, children }: QuestionFormProps): VNode {
  return (
    <form
      class="panel questions"
      aria-label={name}
      autocomplete="off"
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      {children}
      <p class="actions">
        <button type="submit" class="primary">
          {submit}
        </button>
        <span class="aside">{aside}</span>
      </p>
    </form>
  );
}

interface QuestionProps {
  readonly title: string;
  readonly note?: string;
  readonly children: ComponentChildren;
}

/** One question, with what it is answered by. */
export function Question({ title, note, children }: QuestionProps): VNode {
  return (
    <fieldset class="question">
      <legend>{title}</legend>
      <div class="question-entries">{children}</div>
      {note === undefined ? null : <p class="aside">{note}</p>}
    </fieldset>
  );
}

interface ChoicesProps<Id extends string> {
  readonly name: string;
  readonly value: Id;
  readonly of: readonly { readonly id: Id; readonly title: string; readonly note?: string }[];
  readonly onValue: (id: Id) => void;
}

/** One of a few answers. */
export function Choices<Id extends string>({ name, value, of, onValue }: ChoicesProps<Id>): VNode {
  return (
    <div class="choices">
      {of.map(({ id, title, note }) => (
        <label key={id} class="choice">
          <input type="radio" name={name} checked={value === id} onChange={() => onValue(id)} />
          {title} {note === undefined ? null : <span class="aside">{note}</span>}
        </label>
      ))}
    </div>
  );
}

/** What is wrong and belongs to no box of its own. */
export function Wrong({ issue }: { readonly issue: Issue | undefined }): VNode | null {
  return issue === undefined ? null : <p class="field-issue">{issue.message}</p>;
}
