import { SignIns } from './0001-sign-ins';
import { NotedAccesses } from './0002-noted-accesses';
import { FactorsAndTablets } from './0003-factors-and-tablets';

/** In order. A released one is never edited; a change is a new one. */
export const ACCESS_MIGRATIONS = [SignIns, NotedAccesses, FactorsAndTablets];
export const ACCESS_MIGRATIONS_TABLE = 'access_migration';
