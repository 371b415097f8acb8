import type { Route } from '@libs/contracts';
import { HttpCode, RequestMapping, RequestMethod } from '@nestjs/common';
import type { z } from 'zod';

type Answering<R extends Route> = (...asked: never[]) => Promise<z.input<R['answer']>>;
type Decorate<H> = (target: object, name: string | symbol, method: TypedPropertyDescriptor<H>) => void;

const routes = new WeakMap<object, Route>();

/** The route a method answers. One that has none was written past the table, and must not be served. */
export const routeOf = (handler: object): Route => {
  const route = routes.get(handler);
  if (route === undefined)
    throw new Error('A method answers without a route of the table: use @Answers(ROUTES....)');
  return route;
};

const serve = <H extends object>(route: Route): Decorate<H> => {
  const path = route.path.replace(/\{(\w+)\}/g, ':$1');
  const map = RequestMapping({ path, method: RequestMethod[route.method] });

  return (target, name, method) => {
    if (method.value === undefined) throw new Error(`${String(name)} is no method`);
    map(target, name, method);
    HttpCode(route.status)(target, name, method);
    routes.set(method.value, route);
  };
};

/** Path, method, status, access, shape of body and answer: all from one entry of the table. */
export const Answers = <R extends Route, H extends Answering<R>>(route: R): Decorate<H> => serve<H>(route);

/** Writes its answer bit by bit, for as long as the other side listens. */
export const Streams = <H extends (...asked: never[]) => Promise<void>>(route: Route): Decorate<H> =>
  serve<H>(route);
