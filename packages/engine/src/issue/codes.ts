/**
 * Every code an expected failure can carry: the one table. Code, documentation (docs/errors.md) and types
 * agree on it, and a test reads all three. `meaning` is for the docs; the issue's own message is for the shop.
 * A code that is retired moves to `RETIRED_CODES` and is never used again.
 */
export const ISSUE_CODES = {
  ACCOUNT_EXISTS: {
    meaning: 'A name is that of another account already.',
  },
  ACCOUNT_LAST_ADMINISTRATOR: {
    meaning: 'The last administrator would be none any longer.',
  },
  ACCOUNT_NOT_FOUND: {
    meaning: 'An account, a shop or a machine of this identifier does not exist.',
  },
  AIR_CLOSED: { meaning: 'Something on the way of the air is closed, so none reaches the torch.' },
  AIR_NO_FLOW: {
    meaning:
      'No air can flow to the torch: other users take all there is, or the pressure is not above the atmosphere.',
  },
  AIR_RECEIVER_SMALL: {
    meaning: 'The usable air of the receiver lasts less than a minute at the flow of the torch.',
  },
  AIR_SIZE_UNKNOWN: { meaning: 'The trade size of a hose or a pipe is not known.' },
  AIR_VALUE: {
    meaning: 'A value of the air supply cannot be, such as a length of zero or a cut-out below the cut-in.',
  },
  AMOUNT_AMBIGUOUS: { meaning: 'An amount can be read in two ways, such as 1,500 or a bare number.' },
  AMOUNT_KIND: {
    meaning: 'An amount has a unit of the wrong kind, such as a length where a speed is asked.',
  },
  AMOUNT_NOT_UNDERSTOOD: { meaning: 'An amount is not written in a form that can be read.' },
  AMOUNT_RANGE: { meaning: 'An amount is readable but outside what is accepted here.' },
  AMOUNT_UNIT: { meaning: 'The unit of an amount is not known.' },
  COMMISSIONING_CHANGED_MEANWHILE: {
    meaning:
      'The readings of a job were saved by someone else since they were opened; nothing was overwritten.',
  },
  COMMISSION_INPUT: {
    meaning: 'A figure handed to commissioning, such as a resistance or a pressure, cannot be used.',
  },
  COMMISSION_READING: {
    meaning: 'A reading or an answer typed at a commissioning check cannot be understood.',
  },
  ELECTRIC_CURVE: {
    meaning: "The points of a power source's characteristic cannot be, such as a voltage that does not fall.",
  },
  ELECTRIC_SIZE_UNKNOWN: { meaning: 'A lead is of a size or a metal whose resistance is not known.' },
  ELECTRIC_VALUE: {
    meaning:
      'A value of the electric supply cannot be, such as a lead of zero length or a source without a rating.',
  },
  FAULT_EVIDENCE: {
    meaning:
      'What was seen, or a count of it, names something the table of faults does not hold, or an answer it cannot take.',
  },
  FAULT_TABLE: {
    meaning:
      'A table of faults holds a chance outside 0 to 1, an unknown name, or a symptom that no cause explains.',
  },
  GAUGE_CHANGED_MEANWHILE: {
    meaning: "The shop's gauge was saved by someone else since it was opened; nothing was overwritten.",
  },
  GAUGE_COMBINATION: { meaning: 'Two parts of a gauge file do not go together.' },
  GAUGE_FIELD_MISSING: { meaning: 'A field of a gauge file that has no default is missing.' },
  GAUGE_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of a gauge file.' },
  GAUGE_FIELD_VALUE: { meaning: 'A field of a gauge file holds something that is not accepted there.' },
  GAUGE_NOT_READABLE: {
    meaning: "What is saved here of the shop's gauge cannot be used yet; its issues tell why.",
  },
  GAUGE_SYNTAX: { meaning: 'The gauge file is not readable as YAML or JSON.' },
  GAUGE_TOO_LARGE: { meaning: 'The file is larger than a gauge file can be.' },
  GAUGE_VERSION: { meaning: 'The gauge file is of a version that this program does not know.' },
  HOST_REFUSED: { meaning: "A request names a host that is not this computer's own loopback address." },
  JOB_CHANGED_MEANWHILE: {
    meaning: 'A job was saved by someone else since it was opened; nothing was overwritten.',
  },
  JOB_COMBINATION: { meaning: 'Two fields of the job contradict each other.' },
  JOB_FIELD_MISSING: { meaning: 'A field that has no default is missing.' },
  JOB_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place.' },
  JOB_FIELD_VALUE: { meaning: 'A field holds something that is not accepted there.' },
  JOB_NOT_FOUND: { meaning: 'There is no saved job with this identifier.' },
  JOB_NOT_READABLE: { meaning: 'The text sent is not a job that can be planned; its issues tell why.' },
  JOB_SYNTAX: { meaning: 'The file is not readable as YAML or JSON.' },
  JOB_TOO_LARGE: { meaning: 'The file is larger than a job can be.' },
  JOB_VERSION: { meaning: 'The file is of a version that this program does not know.' },
  KIT_CHANGED_MEANWHILE: {
    meaning: 'The kit was saved by someone else since it was opened; nothing was overwritten.',
  },
  KIT_COMBINATION: { meaning: 'Two fields of the kit contradict each other.' },
  KIT_FIELD_MISSING: { meaning: 'A field of the kit that has no default is missing.' },
  KIT_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of the kit.' },
  KIT_FIELD_VALUE: { meaning: 'A field of the kit holds something that is not accepted there.' },
  KIT_NOT_READABLE: {
    meaning:
      'The text sent, or the kit saved here, is not a kit that can be planned with; its issues tell why.',
  },
  KIT_SYNTAX: { meaning: 'The kit file is not readable as YAML or JSON.' },
  KIT_TOO_LARGE: { meaning: 'The file is larger than a kit can be.' },
  KIT_VERSION: { meaning: 'The kit file is of a version that this program does not know.' },
  KNOWLEDGE_CHANGED_MEANWHILE: {
    meaning: "The shop's trials were saved by someone else since they were opened; nothing was overwritten.",
  },
  KNOWLEDGE_NOT_READABLE: {
    meaning:
      "The text sent, or what is saved here of the shop's trials, cannot be learned from; its issues tell why.",
  },
  LINK_REFUSED: {
    meaning: 'A one-time link was used already, is too old or was never made.',
  },
  LOGGER_COMBINATION: { meaning: 'What a logger description says does not hold together.' },
  LOGGER_FIELD_MISSING: { meaning: 'A field of a logger description is missing.' },
  LOGGER_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of a logger description.' },
  LOGGER_FIELD_VALUE: {
    meaning: 'A field of a logger description holds something that is not accepted there.',
  },
  LOGGER_SYNTAX: { meaning: 'The logger description is not readable as YAML or JSON.' },
  LOGGER_TOO_LARGE: { meaning: 'The file is larger than a logger description can be.' },
  LOGGER_VERSION: { meaning: 'The logger description is of a version that this program does not know.' },
  LOG_NOT_READABLE: {
    meaning: 'A log cannot be read: it has no rows, no clock, or no column that is told to be of the run.',
  },
  NOT_PERMITTED: {
    meaning: 'The role of the person or the token of the machine does not allow this.',
  },
  ORIGIN_REFUSED: { meaning: 'A request comes from a page that this program did not serve.' },
  PAPER_WANTING: {
    meaning: 'A paper cannot be made of this job yet: something that it tells of is missing.',
  },
  PATH_NOT_FOUND: { meaning: 'The program answers nothing at this address.' },
  PLACE_NO_REACH: {
    meaning: 'No place in the bay lets the leads and hoses in stock reach every point of the seam.',
  },
  PLACE_VALUE: {
    meaning:
      'A value of the bay or its stock cannot be, such as an outline of two corners or a lead of zero length.',
  },
  PORT_UNAVAILABLE: { meaning: 'The program cannot listen on the port asked for.' },
  PROGRAM_FAULT: { meaning: 'The program itself went wrong: a bug to report.' },
  READINGS_CHANGED_MEANWHILE: {
    meaning:
      'What was run and gauged on a job was saved by someone else since it was opened; nothing was overwritten.',
  },
  READINGS_COMBINATION: { meaning: 'Two fields of a readings file contradict each other.' },
  READINGS_FIELD_MISSING: { meaning: 'A field of a readings file that has no default is missing.' },
  READINGS_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of a readings file.' },
  READINGS_FIELD_VALUE: { meaning: 'A field of a readings file holds something that is not accepted there.' },
  READINGS_NOT_READABLE: {
    meaning: 'The text sent is not a readings file that can be used; its issues tell why.',
  },
  READINGS_SYNTAX: { meaning: 'The readings file is not readable as YAML or JSON.' },
  READINGS_TOO_LARGE: { meaning: 'The file is larger than a readings file can be.' },
  READINGS_VERSION: { meaning: 'The readings file is of a version that this program does not know.' },
  REHEARSAL_FAULTS: { meaning: 'The faults asked of a rehearsal cannot be read.' },
  REQUEST_INVALID: { meaning: 'A request lacks something or holds something that is not accepted.' },
  REQUEST_MEDIA_TYPE: { meaning: 'A request carries its content in a form other than JSON.' },
  REQUEST_TOO_LARGE: { meaning: 'A request is larger than this program takes.' },
  REVISION_NOT_FOUND: { meaning: 'A saved job has no revision of this number.' },
  RUN_FILE_DAMAGED: {
    meaning: 'The file of a run is gone from the disk, or is no longer what was kept.',
  },
  RUN_FILE_UNKNOWN: { meaning: 'A run is to be kept of a file that was not sent before.' },
  RUN_NOT_FOUND: { meaning: 'There is no run with this identifier.' },
  RUN_NOT_LIVE: { meaning: 'Readings are sent, or asked for, of a run that is not under way.' },
  RUN_SOURCE: { meaning: 'Live readings cannot be taken from the source named.' },
  SEARCH_TOO_LARGE: { meaning: 'An exact search would have to try more than this program takes on.' },
  SIGN_IN_NEEDED: {
    meaning: 'Somebody asks who has not signed in, or whose sign-in has ended.',
  },
  SIGN_IN_REFUSED: {
    meaning: 'Name and password do not go together.',
  },
  SIGN_IN_THROTTLED: {
    meaning: 'Signing in failed too often from here.',
  },
  STORE_FULL: {
    meaning:
      'The disk that holds what is saved, or the readings that come in, is full; nothing more was kept.',
  },
  STORE_HISTORY: {
    meaning: 'The database was made by another version of the program and cannot be used by this one.',
  },
  STORE_IN_DOUBT: {
    meaning: 'The database was lost while it was storing something; it is not known whether that is stored.',
  },
  STORE_UNAVAILABLE: { meaning: 'The database cannot be read or written at the moment; nothing was saved.' },
  SUMMARY_COMBINATION: { meaning: 'What a summary file says of a shop does not hold together.' },
  SUMMARY_FIELD_MISSING: { meaning: 'A field of a summary file is missing.' },
  SUMMARY_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of a summary file.' },
  SUMMARY_FIELD_VALUE: { meaning: 'A field of a summary file holds something that is not accepted there.' },
  SUMMARY_SYNTAX: { meaning: 'The summary file is not readable as YAML or JSON.' },
  SUMMARY_TOO_LARGE: { meaning: 'The file is larger than a summary file can be.' },
  SUMMARY_VERSION: { meaning: 'The summary file is of a version that this program does not know.' },
  SURVEY_NOT_READABLE: {
    meaning: 'A file holds no gauge readings, scanned sections or points of a groove that can be told.',
  },
  TABLE_NOT_READABLE: {
    meaning: 'A file that should hold a table of numbers cannot be read as one.',
  },
  TOKEN_REFUSED: { meaning: 'A request does not hold the token that lets a browser or a program in.' },
  TRIALS_COMBINATION: { meaning: 'Two fields of a trials file contradict each other.' },
  TRIALS_FIELD_MISSING: { meaning: 'A field of a trials file that has no default is missing.' },
  TRIALS_FIELD_UNKNOWN: { meaning: 'A field name is not known at this place of a trials file.' },
  TRIALS_FIELD_VALUE: { meaning: 'A field of a trials file holds something that is not accepted there.' },
  TRIALS_SYNTAX: { meaning: 'The trials file is not readable as YAML or JSON.' },
  TRIALS_TOO_LARGE: { meaning: 'The file is larger than a trials file can be.' },
  TRIALS_VERSION: { meaning: 'The trials file is of a version that this program does not know.' },
  WORK_BUSY: { meaning: 'Too much is being worked out already; this was not begun.' },
  WORK_STOPPED: {
    meaning:
      'Something was given up before it was done: it took too long or too much memory, or nobody waited for it.',
  },
} as const;

/** Code of an expected failure, a key of the table. */
export type IssueCode = keyof typeof ISSUE_CODES;

/** Codes once used in a release and never to be used again. */
export const RETIRED_CODES: readonly string[] = [];
