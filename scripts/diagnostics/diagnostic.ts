/**
 * A diagnostic is one fault, told to the person who can mend it: what is wrong, where, and what to do.
 * Every stage returns its diagnostics as values; nothing is printed or thrown for a fault in a record.
 */
import type { DiagnosticCode } from './catalogue.ts';

export type Severity = 'error' | 'warning';

/** A place in a file of the guide folder. Lines and columns count from 1. */
export interface Place {
  /** Path relative to the guide folder, with forward slashes. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

export interface Diagnostic {
  readonly code: DiagnosticCode;
  readonly severity: Severity;
  /** What is wrong, as a sentence without blame. It never proposes the mend. */
  readonly message: string;
  /** What to do about it. */
  readonly hint: string;
  readonly place?: Place;
}

/** Orders by file, line, column, code, so that a report is the same on every run. */
export function compareDiagnostics(a: Diagnostic, b: Diagnostic): number {
  return (
    compareText(a.place?.file ?? '', b.place?.file ?? '') ||
    (a.place?.line ?? 0) - (b.place?.line ?? 0) ||
    (a.place?.column ?? 0) - (b.place?.column ?? 0) ||
    compareText(a.code, b.code) ||
    compareText(a.message, b.message)
  );
}

export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((diagnostic) => diagnostic.severity === 'error');
}

/** `crops/carrot.yaml:7:10 error unknown-key: message` and the hint on the next line. */
export function formatDiagnostic(diagnostic: Diagnostic): string {
  const { place } = diagnostic;
  const at = place ? `${place.file}:${place.line}:${place.column} ` : '';
  return `${at}${diagnostic.severity} ${diagnostic.code}: ${diagnostic.message}\n    ${diagnostic.hint}`;
}

/** The whole report: every fault in order, then a line that counts them. Empty text when there is none. */
export function formatReport(diagnostics: readonly Diagnostic[]): string {
  if (diagnostics.length === 0) return '';
  const sorted = [...diagnostics].sort(compareDiagnostics);
  const errors = sorted.filter((diagnostic) => diagnostic.severity === 'error').length;
  const warnings = sorted.length - errors;
  const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;
  const tail = [errors > 0 ? count(errors, 'fault') : '', warnings > 0 ? count(warnings, 'warning') : ''];
  return `${sorted.map(formatDiagnostic).join('\n')}\n${tail.filter(Boolean).join(', ')}\n`;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
