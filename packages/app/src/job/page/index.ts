export { JobHeader } from './job-header.tsx';
export { JobPage } from './job-page.tsx';
export { jobSaveWords } from './job-save-words.ts';
export { jobTitle } from './job-title.ts';
export { JobKeeper, useOpenedJob } from './opened-job.tsx';
export { ReplaceDialog } from './replace-dialog.tsx';
export { RestoredNotice } from './restored-notice.tsx';
export { SaveStatus } from './save-status.tsx';
export { useSave } from './use-save.tsx';
