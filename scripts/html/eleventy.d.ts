/** The part of Eleventy 3 that is used here; the package itself brings no types. */
declare module '@11ty/eleventy' {
  export interface EleventyConfig {
    setUseGitIgnore(use: boolean): void;
    setNunjucksEnvironmentOptions(options: Readonly<Record<string, boolean>>): void;
    addGlobalData(name: string, value: unknown): void;
    addTemplate(name: string, body: string, data: Readonly<Record<string, unknown>>): void;
  }

  export interface EleventyPage {
    readonly outputPath: string;
    readonly content: string;
  }

  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: {
        readonly configPath: string | null;
        readonly quietMode: boolean;
        readonly config: (config: EleventyConfig) => void;
      },
    );
    disableLogger(): void;
    toJSON(): Promise<readonly EleventyPage[]>;
  }
}
