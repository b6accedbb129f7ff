import type { english } from './en';

/** The English catalogue: what its keys are, those of every language are. */
export type English = typeof english;

/** A tree of texts of the shape of another. */
export type SameShape<Tree> = {
  readonly [Key in keyof Tree]: Tree[Key] extends string ? string : SameShape<Tree[Key]>;
};

/** A language's texts. Reasons are by code and may lack some: those are shown in English. */
export interface Catalogue {
  readonly texts: SameShape<English>;
  readonly reasons: Readonly<Record<string, ReasonText>>;
}

/** What a reason says in another language than the core's; its values stand in braces. */
export interface ReasonText {
  readonly message: string;
  readonly remedy?: string;
}

/** Paths of the texts: 'panels.ball.diameter'. */
export type TextKey = PathsOf<English>;

type PathsOf<Tree, Before extends string = ''> = {
  [Key in keyof Tree & string]: Tree[Key] extends string
    ? `${Before}${Key}`
    : PathsOf<Tree[Key], `${Before}${Key}.`>;
}[keyof Tree & string];

type TextAt<Tree, Path extends string> = Path extends `${infer Key}.${infer Rest}`
  ? Key extends keyof Tree
    ? TextAt<Tree[Key], Rest>
    : never
  : Path extends keyof Tree
    ? Tree[Path]
    : never;

type NamesIn<Text> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | NamesIn<Rest>
  : never;

/** A text goes in as it is: `showNumber` and its like write numbers. A number chooses plural forms. */
type Value = string | number;

/** The values a text needs by name; one with a choice or a plural in it is checked when it is shown. */
export type ValuesOf<Key extends TextKey> =
  TextAt<English, Key> extends infer Text
    ? Text extends `${string}, ${'plural' | 'select' | 'selectordinal'},${string}`
      ? readonly [values: Readonly<Record<string, Value>>]
      : [NamesIn<Text>] extends [never]
        ? readonly []
        : readonly [values: Readonly<Record<NamesIn<Text> & string, Value>>]
    : never;
