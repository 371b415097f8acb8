import type { Recorded } from '@libs/kernel';

/** How someone showed who they are. */
export type SignInMeans = 'pin' | 'password' | 'passkey' | 'provider' | 'setup-code' | 'invitation';

/**
 * Who came in, who was kept out and who was given or lost access. They stand in a ledger of their own, beside the
 * plant's: what a home's record says of its builders does not hang on who looked at it.
 */
export type AccountEvent =
  | AccessGiven
  | AccessWithdrawn
  | SignedIn
  | SignInsRefused
  | SignedOut
  | SessionsEnded
  | TokenMade
  | EntriesRefused
  | ExportTaken
  | FactorAdded
  | FactorRemoved
  | TabletOffered
  | TabletAccepted
  | TabletEnded
  | SampleDrawn
  | FeedSubscribed
  | FeedEnded
  | LinkIssued
  | LinkOpened
  | LinkEnded;

/** A PIN or a password was set. */
export type AccessGiven = {
  readonly type: 'AccessGiven';
  readonly data: { readonly account: string; readonly means: SignInMeans };
};
/** Everything that let this account in stopped working. */
export type AccessWithdrawn = {
  readonly type: 'AccessWithdrawn';
  readonly data: { readonly account: string };
};
export type SignedIn = {
  readonly type: 'SignedIn';
  readonly data: {
    readonly account: string;
    readonly means: SignInMeans;
    readonly session: string;
    /** The bound tablet it was on. */
    readonly tablet?: string;
  };
};
/** Refusals in a row, counted together so that whoever guesses cannot fill the ledger. `until`: the last of them. */
export type SignInsRefused = {
  readonly type: 'SignInsRefused';
  readonly data: { readonly account: string; readonly count: number; readonly until: string };
};
export type SignedOut = {
  readonly type: 'SignedOut';
  readonly data: { readonly account: string; readonly session: string };
};
/** Ended by someone else than its holder, or because of a new sign-in on the same device. */
export type SessionsEnded = {
  readonly type: 'SessionsEnded';
  readonly data: { readonly account: string; readonly sessions: readonly string[] };
};
/** For a program. `role` is all it may do. */
export type TokenMade = {
  readonly type: 'TokenMade';
  readonly data: {
    readonly account: string;
    readonly role: string;
    readonly name: string;
    /** Left out: all that the role may. */
    readonly scopes?: readonly string[];
  };
};
/** Someone signed in asked for what their role may not have; counted together by route. */
export type EntriesRefused = {
  readonly type: 'EntriesRefused';
  readonly data: {
    readonly account: string;
    readonly route: string;
    readonly count: number;
    readonly until: string;
  };
};
/** What was taken away in a file: of which home, by which road. `reason` is sealed where one was asked for. */
export type ExportTaken = {
  readonly type: 'ExportTaken';
  readonly data: {
    readonly account: string;
    readonly what: string;
    readonly subject: string;
    readonly reason?: string;
  };
};
/** Something more than a PIN or a password lets this account in: a phone's codes, a passkey, a provider. */
export type FactorAdded = {
  readonly type: 'FactorAdded';
  readonly data: { readonly account: string; readonly factor: string };
};
export type FactorRemoved = {
  readonly type: 'FactorRemoved';
  readonly data: { readonly account: string; readonly factor: string };
};
/** A code was made that binds a tablet to stations. `account` is the tablet's. */
export type TabletOffered = {
  readonly type: 'TabletOffered';
  readonly data: { readonly account: string; readonly name: string; readonly stations: readonly string[] };
};
/** The code was typed into a tablet: PINs count there from now on. */
export type TabletAccepted = { readonly type: 'TabletAccepted'; readonly data: { readonly account: string } };
/** PINs count there no more, and every session on it has ended. */
export type TabletEnded = { readonly type: 'TabletEnded'; readonly data: { readonly account: string } };
/** Homes drawn for an audit, so that whoever drew them cannot have chosen them: the seed gives the same again. */
export type SampleDrawn = {
  readonly type: 'SampleDrawn';
  readonly data: {
    readonly account: string;
    /** Homes labelled on these days were in the lot. */
    readonly from: string;
    readonly to: string;
    readonly lot: number;
    /** ISO 2859-1: inspection level, acceptance quality limit, and the code letter they lead to. */
    readonly level: string;
    readonly limit: string;
    readonly letter: string;
    readonly accept: number;
    readonly seed: string;
    readonly homes: readonly string[];
  };
};
/** The plant's news goes out from now on. `to`: the host it is posted to, or `mail`; an address may say who somebody is. */
export type FeedSubscribed = {
  readonly type: 'FeedSubscribed';
  readonly data: {
    readonly account: string;
    readonly subscription: string;
    readonly to: string;
    /** Kinds of news, or names of events; `all`: every event that may leave the plant. */
    readonly wants: readonly string[];
  };
};
/** Nothing more is sent there, and the secret is forgotten. */
export type FeedEnded = {
  readonly type: 'FeedEnded';
  readonly data: { readonly account: string; readonly subscription: string };
};
/** A link was made that opens one home, without an account, until a day. `account` is the link's. */
export type LinkIssued = {
  readonly type: 'LinkIssued';
  readonly data: {
    readonly account: string;
    readonly home: string;
    readonly purpose: string;
    readonly until: string;
  };
};
/** Somebody opened the home with it; openings within the same hour are one. */
export type LinkOpened = {
  readonly type: 'LinkOpened';
  readonly data: { readonly account: string; readonly home: string; readonly purpose: string };
};
/** It opens nothing any more, before its day. */
export type LinkEnded = {
  readonly type: 'LinkEnded';
  readonly data: { readonly account: string; readonly home: string };
};
export type RecordedAccountEvent = Recorded<AccountEvent>;
