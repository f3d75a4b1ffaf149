/**
 * Every kind of fault, by its permanent name. A name is never reused for another fault.
 * The sentence says when it is reported; message and hint are written where the fault is found.
 *
 * Wording: the message says what is wrong and why it matters; only the hint proposes the mend.
 * No blame, no jokes, one report per cause.
 */
export const diagnosticCatalogue = {
  'file-not-utf8': 'A text file holds bytes that are not UTF-8.',
  'file-too-large': 'A record file is larger than any record needs to be.',
  'file-unreadable': 'A file or folder of the guide cannot be read.',
  'folder-missing': 'The guide folder lacks a folder or file that every guide has.',
  'link-leaves-guide': 'A link or a path in a record points outside the guide folder.',
  'unread-file': 'A record lies where no record is looked for.',
  'yaml-syntax': 'A record is not well-formed YAML.',
  'yaml-alias-bomb': 'Aliases in a record multiply beyond any honest use.',
  'duplicate-key': 'A record gives the same key twice.',
  'duplicate-id': 'Two records of one kind have the same id.',
  'id-not-file-name': 'The id in a record is not its file name.',
  'unknown-key': 'A record has a key that the schema does not know.',
  'missing-key': 'A record lacks a key that the schema requires.',
  'wrong-type': 'A value is of another type than the schema asks for.',
  'wrong-value': 'A value is not one of those that the schema allows.',
  'out-of-range': 'A number, a length of text or a count lies outside its range.',
  'bad-id': 'An id has characters that a file name or an address cannot carry.',
  'quantity-without-unit': 'A bare number stands where a quantity with a unit belongs.',
  'bad-quantity': 'A quantity cannot be read, or its unit measures something else.',
  'impossible-date': 'A date is not in the calendar.',
  'unknown-reference': 'A record refers to an id that no record has.',
  'unresolved-name': 'Prose refers to a finding or exhibit that its sheet does not have.',
  'unknown-phrase': 'A phrase is missing from the language record.',
  'bad-phrase': 'A phrase in a language record cannot be read or lacks an argument.',
  'bad-prose': 'Markdown uses something that a sheet cannot show.',
  'station-csv': 'A daily station file cannot be read or is too thin to compute from.',
  'normals-csv': 'A climate normals file cannot be read or lacks what a region needs.',
  'freeze-table': 'A typed freeze table is out of order or incomplete.',
  'no-hazard-profile': 'A tool, material or action has no hazard profile in the catalogue.',
  'weakened-caution': 'A guide tries to weaken a caution that comes with Groundsheet.',
  'hazard-record': 'A caution or a combination of hazards contradicts itself.',
  'silent-step': 'Nothing in a step of a project brings a caution, and the step does not say why.',
  'unlisted-hazard': 'The words of a step speak of a tool or material that the step does not list.',
  'class-step': 'A step is not for the children of a class, and nothing says what they do meanwhile.',
  segment:
    'A segment does not add up, shows a step that is not there, or has a caption too long for the screen.',
  'hard-to-read': 'The pages of a class handout are harder to read than suits the age of the class.',
  structure: 'A build project does not add up.',
  'crop-figures': 'The figures of a crop contradict each other.',
  layout: 'A layout of the guide cannot be read or asks for something that a page does not have.',
  design: 'The look of the sheets cannot be read well.',
  'missing-glyph': 'No font that sheets use has a character of the text.',
  'does-not-fit': 'Content does not fit the page or column it was made for.',
  'past-one-page': 'A sheet that is meant for one page is longer.',
  'nothing-selected': 'The narrowing words on the command line select no sheet.',
  'output-not-ours': 'The output folder holds files that stand in the way of the sheets.',
  'output-busy': 'Another build is writing to the same output folder.',
  'output-unwritable': 'The output folder, or the folder it stands in, cannot be written.',
  'output-edited': 'A file that Groundsheet made was changed by hand; the copy is kept under another name.',
} as const satisfies Record<string, string>;

export type DiagnosticCode = keyof typeof diagnosticCatalogue;
