import type { CompiledPlan, PlannedOperation } from '@libs/judge';
import type { Json, JsonObject } from '@libs/kernel';
import { canonicalJson } from '@libs/kernel';

type Undigested = Omit<CompiledPlan, 'digest'>;
type Sha256Hex = (text: string) => string;

/**
 * The digest of a plan: the SHA-256 of its RFC 8785 text, in which each operation is stood in for by the SHA-256 of
 * its own RFC 8785 text. Most operations are the same in most plans, and their digest is taken once.
 */
export const planDigest = (plan: Undigested, sha256Hex: Sha256Hex): string =>
  sha256Hex(
    canonicalJson({
      ...plan,
      operations: Object.fromEntries(
        Object.entries(plan.operations).map(([id, operation]) => [id, operationDigest(operation, sha256Hex)]),
      ),
    }),
  );

const KEPT = new WeakMap<PlannedOperation, string>();

const operationDigest = (operation: PlannedOperation, sha256Hex: Sha256Hex): string => {
  const known = KEPT.get(operation);
  if (known !== undefined) return known;

  const digest = sha256Hex(canonicalJson(asJson(operation)));
  KEPT.set(operation, digest);
  return digest;
};

/** An operation is JSON throughout; its type does not say so, because its members are named. */
const asJson = (operation: PlannedOperation): JsonObject =>
  Object.fromEntries(Object.entries(operation).map(([name, member]): [string, Json] => [name, member]));
