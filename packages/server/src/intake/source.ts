/** Something that brings readings until it is closed. */
export interface Source {
  /** Where readings can be sent, or where they come from; never with a password. */
  readonly address: string;
  close(): Promise<void>;
}
