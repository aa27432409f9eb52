import type { UnitSystem, Verdict } from '@furrow/engine';
import type { Drawing } from '../drawing/index.ts';
import type { Figure } from './figure.ts';

/** Sheets a document can be printed on. */
export type PaperSize = 'a4' | 'letter';

/** A heading; level 1 is the document's title. */
export interface HeadingBlock {
  readonly kind: 'heading';
  readonly level: 1 | 2;
  /** A few words above the heading that say what kind of paper it is. */
  readonly above?: string;
  readonly text: string;
  /** Lines under a title, the first of them to be read first. */
  readonly below?: readonly string[];
  /** A code beside a title, which a telephone reads. */
  readonly code?: PaperCode;
  /** Whether it begins a new page. */
  readonly new_page?: true;
}

/** A code to be read by a machine, and what it holds in words. */
export interface PaperCode {
  /** What it holds: an address, or `furrow:revision:` and the revision. */
  readonly content: string;
  readonly words: string;
}

/** A paragraph of running text. */
export interface ParagraphBlock {
  readonly kind: 'paragraph';
  readonly text: string;
  readonly tone: 'plain' | 'lead' | 'small';
}

/** Values with their labels, side by side; `big` ones are read at arm's length. */
export interface FiguresBlock {
  readonly kind: 'figures';
  readonly size: 'big' | 'plain';
  readonly items: readonly Figure[];
}

/** One column of a table. */
export interface TableColumn {
  readonly title: string;
  readonly align: 'start' | 'end';
  /** Share of the table's width, relative to the other columns [-]. */
  readonly weight: number;
  /** The column that must be read first. */
  readonly strong?: boolean;
  /** A hand writes in it: it keeps its share of the width, however little is printed there. */
  readonly hand?: boolean;
  /** Where a page is too narrow for the column, its texts stand below the table: each once, or by row. */
  readonly below?: 'once' | 'by_row';
}

/** What makes a cell, or a whole row, stand out on a screen; its words say the same. A verdict is marked as margins are. */
export interface TableMark {
  /** Number of the row, from 0 [-]. */
  readonly row: number;
  /** Number of the column, from 0 [-]; absent: the whole row. */
  readonly column?: number;
  readonly mark: 'chosen' | 'broken' | 'open' | 'ask' | Verdict;
}

/** A table; every row has a text for every column. */
export interface TableBlock {
  readonly kind: 'table';
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly marks?: readonly TableMark[];
  /** Rows are filled in by hand: taller, and with lines between the columns. */
  readonly hand?: boolean;
  /** Smaller letters, for tables of many words. */
  readonly small?: boolean;
  /** Letters a little smaller, for a table that shares the width with another. */
  readonly close?: boolean;
}

/** A label with its value, or with a line to write it on by hand. */
export interface Field {
  readonly label: string;
  /** What is known; left out, a hand fills it in. */
  readonly value?: string;
}

/** Labels with values or lines to write on, side by side in rows. */
export interface FieldsBlock {
  readonly kind: 'fields';
  /** How many stand side by side [-]. */
  readonly across: number;
  readonly items: readonly Field[];
}

/** A drawing, as wide as its column. */
export interface DrawingBlock {
  readonly kind: 'drawing';
  readonly drawing: Drawing;
}

/** Short statements, one per line; cautions carry a mark. */
export interface ListBlock {
  readonly kind: 'list';
  readonly tone: 'plain' | 'caution';
  readonly items: readonly string[];
  /** Whether it belongs to what follows, and stands at the foot of a page only with its beginning. */
  readonly introduces?: true;
}

/** Lines to sign on, by hand. */
export interface SignaturesBlock {
  readonly kind: 'signatures';
  readonly roles: readonly string[];
}

/** Blocks side by side. */
export interface ColumnsBlock {
  readonly kind: 'columns';
  readonly columns: readonly { readonly weight: number; readonly blocks: readonly PaperBlock[] }[];
}

/** One part of a paper. */
export type PaperBlock =
  | HeadingBlock
  | ParagraphBlock
  | FiguresBlock
  | TableBlock
  | DrawingBlock
  | ListBlock
  | SignaturesBlock
  | FieldsBlock
  | ColumnsBlock;

/** A paper as a tree, from which screen, print and PDF are made. */
export interface PaperDocument {
  readonly title: string;
  /** Language of the fixed texts, as an HTML `lang` value. */
  readonly language: string;
  /** Content hash of the job it was made from. */
  readonly revision: string;
  readonly program_version: string;
  readonly units: UnitSystem;
  readonly paper: PaperSize;
  /** Whether its letters are made as large as its pages allow. */
  readonly fitted: boolean;
  /** Line at the foot of every page: what the paper was made from. */
  readonly colophon: string;
  readonly blocks: readonly PaperBlock[];
}
