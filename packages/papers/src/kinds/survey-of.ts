import { answerSurvey, type SurveyReport } from '@furrow/engine';
import type { PaperSubject } from './paper-subject.ts';

/** What was measured of the groove of a job; undefined where nothing was, or a file of it cannot be read. */
export function surveyOf({
  read,
  answer,
  knowledge,
  measured,
  gauge,
}: PaperSubject): SurveyReport | undefined {
  if (measured === undefined || measured.length === 0) return undefined;
  const outcome = answerSurvey({
    files: measured,
    job: { read, answer, knowledge },
    shopGauge: gauge,
    version: answer.inputs.program_version,
  });
  return outcome.ok ? outcome.value : undefined;
}
