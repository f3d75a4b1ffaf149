/**
 * The document as indented text, for reviews and goldens: every block and every word, nothing of the look. No-break
 * spaces are shown as ordinary ones, so that it can be read and compared by eye.
 */
import { plainText } from './build.ts';
import type { AnswerRoom, Block, Caution, Inline, SheetDocument } from './document.ts';

export function printSheet(document: SheetDocument): string {
  const head = [
    `${document.kind} ${document.number} [${document.language}] ${document.paper}`,
    `title: ${document.title}`,
    `for: ${document.datesFor}`,
    ...(document.notice === undefined ? [] : [`notice: ${document.notice}`]),
    `foot: ${document.office} · ${document.issuedText} · ${document.reviewText}`,
  ];
  const lines = [...head, ...document.blocks.flatMap((block) => printBlock(block))];
  return `${lines.join('\n').replaceAll('\u00A0', ' ')}\n`;
}

function printBlock(block: Block): string[] {
  switch (block.kind) {
    case 'heading':
      return [`heading ${block.level} #${block.id}: ${words(block.content)}`];
    case 'paragraph':
      return [`paragraph ${block.role}: ${words(block.content)}`];
    case 'list':
      return [
        block.ordered ? 'ordered list' : 'list',
        ...block.items.flatMap((item) => indented(['item', ...indented(item.flatMap(printBlock))])),
      ];
    case 'checklist':
      return ['checklist', ...indented(block.items.map(words))];
    case 'table':
      return [
        `table #${block.id}: ${words(block.caption)}`,
        ...indented([
          `columns: ${block.columns.map((column) => words(column.header) + (column.unit === undefined ? '' : ` (${column.unit})`)).join(' | ')}`,
          ...block.groups.flatMap((group) => [
            ...(group.header ? [`group: ${words(group.header)}`] : []),
            ...group.rows.map((row) => row.cells.map(words).join(' | ')),
          ]),
          ...block.notes.map((note) => `note: ${words(note)}`),
        ]),
      ];
    case 'figure':
      return [
        `figure #${block.scene.id}: ${block.scene.alternative}`,
        ...(block.caption ? indented([`caption: ${words(block.caption)}`]) : []),
      ];
    case 'caution':
      return [printCaution(block.caution)];
    case 'caution-box':
      return [
        `caution box #${block.id}: ${words(block.title)}`,
        ...indented([
          ...block.groups.flatMap(({ signal, items }) => [signal, ...indented(items.map(words))]),
          `closing: ${words(block.closing)}`,
        ]),
      ];
    case 'key-numbers':
      return [
        'key numbers',
        ...indented(block.items.map(({ value, label }) => `${words(value)}: ${words(label)}`)),
      ];
    case 'steps':
      return block.items.flatMap((step) => [
        `step ${step.number}: ${words(step.title)}`,
        ...indented([
          ...step.cautions.map(printCaution),
          ...step.body.flatMap(printBlock),
          ...(step.drawing ? [`figure #${step.drawing.id}: ${step.drawing.alternative}`] : []),
        ]),
      ]);
    case 'beside':
      return [
        'aside',
        ...indented(block.aside.flatMap(printBlock)),
        'main',
        ...indented(block.main.flatMap(printBlock)),
      ];
    case 'wide':
    case 'together':
      return [block.kind, ...indented(block.content.flatMap(printBlock))];
    case 'labels':
      return [
        'labels',
        ...indented(block.items.map(({ title, lines }) => [words(title), ...lines.map(words)].join(' / '))),
      ];
    case 'doer':
      return [`doer ${block.who}: ${words(block.content)}`];
    case 'worksheet':
      return [
        'worksheet',
        ...indented(block.opening ? [words(block.opening)] : []),
        ...indented(
          block.items.map(
            ({ question, room }, index) => `${index + 1}. ${words(question)} [${printRoom(room)}]`,
          ),
        ),
      ];
    case 'workings':
      return [
        'workings',
        ...indented(
          block.items.map(
            (item) => `#${item.id} ${words(item.term)} = ${words(item.value)}: ${words(item.explanation)}`,
          ),
        ),
      ];
    case 'sources':
      return [
        'sources',
        ...indented(
          block.items.map(
            (item, index) =>
              `${index + 1}. ${words(item.content)}${item.href === undefined ? '' : ` <${item.href}>`}`,
          ),
        ),
      ];
    case 'page-break':
      return ['page break'];
  }
}

function printRoom(room: AnswerRoom): string {
  return room.kind === 'lines' ? `${room.count} ${room.ruling} lines` : `${room.size} box`;
}

function printCaution({ signal, hazard, avoidance }: Caution): string {
  return `${signal}: ${words(hazard)} ${words(avoidance)}`;
}

function words(content: readonly Inline[]): string {
  return plainText(content);
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => `  ${line}`);
}
