/**
 * The points that a build passes on its way. A test stops a build at each of them, to show that whatever a
 * kill leaves behind is put right by the next build.
 */
export const checkpoints = [
  'locked',
  'repaired',
  'surveyed',
  'staging-made',
  'file-written',
  'foreign-carried',
  'manifest-written',
  'moved-aside',
  'moved-in',
  'old-file-removed',
  'old-removed',
  'moved-back',
  'staging-removed',
] as const;
export type Checkpoint = (typeof checkpoints)[number];

/** Called at each point; `path` is the file in question, where there is one. Waits for what it returns. */
export type Reach = (name: Checkpoint, path?: string) => void | Promise<void>;
