/**
 * What a role is not offered because the server would refuse it. The server decides; this only spares a useless tap.
 * A test holds it against the contract.
 */
type Roles = { readonly roles: readonly string[] };

const among =
  (allowed: readonly string[]) =>
  ({ roles }: Roles): boolean =>
    roles.some((role) => allowed.includes(role));

const TELLERS = ['station-lead', 'quality-manager', 'inspector', 'administrator'];

/** Work, askings, moves, rework: what happens to a section. */
export const mayTell = among(TELLERS);
/** A defect, a hold and whether rework is good: the inspection agency finds and looks like anybody else. */
export const mayFind = among([...TELLERS, 'agency-inspector']);
