import type { Route } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { ArgumentsHost, ExceptionFilter } from '@nestjs/common';
import { Catch, HttpException, Inject } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { FAULTS, LOG } from '../tokens';
import type { Log } from './log';
import type { ProblemFields } from './problem';
import { NOT_JSON, Problem, problemBody } from './problem';

/** Says what a fault from below means to the sender; undefined when it means nothing but a defect of ours. */
export type FaultReader = (fault: unknown) => ProblemFields | undefined;

/** Everything thrown ends here, and leaves as problem details. What nobody foresaw is logged whole and told as 500. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(
    @Inject(FAULTS) private readonly readFault: FaultReader,
    @Inject(LOG) private readonly log: Log,
  ) {}

  catch(fault: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<FastifyRequest>();
    const fields = this.fieldsOf(fault, request);
    if (fields.status >= 500)
      this.log('request-failed', {
        request: request.id,
        method: request.method,
        url: request.url,
        ...told(fault),
      });

    void http
      .getResponse<FastifyReply>()
      .status(fields.status)
      .headers(fields.headers ?? {})
      .header('content-type', 'application/problem+json; charset=utf-8')
      .send(JSON.stringify(problemBody(fields)));
  }

  private fieldsOf(fault: unknown, request: FastifyRequest): ProblemFields {
    if (fault instanceof Problem) return fault.fields;
    if (fault instanceof HttpException) return ofFramework(fault, request);
    return this.readFault(fault) ?? OURS;
  }
}

const OURS: ProblemFields = {
  status: 500,
  code: 'server-fault',
  title: 'The server could not answer',
  detail: 'Nothing was recorded unless an answer says so. Send the same again, with the same key.',
};

const told = (fault: unknown): { readonly [name: string]: unknown } =>
  fault instanceof Error
    ? { fault: fault.message, stack: fault.stack, cause: fault.cause }
    : { fault: String(fault) };

/** What Nest and Fastify refuse by themselves, before any of our code is asked. */
const ofFramework = (fault: HttpException, request: FastifyRequest): ProblemFields => {
  const status = fault.getStatus();
  if (status === 404) return noSuchRoute(request);
  if (status === 400) {
    return {
      status,
      code: 'request-malformed',
      title: 'The request could not be read',
      detail: fault.message,
      errors: [{ pointer: '#', detail: fault.message }],
    };
  }
  if (status === 413) return tooLarge(request);
  return { status, ...(REFUSED[status] ?? { code: 'request-refused', title: fault.message }) };
};

const tooLarge = ({ routeOptions }: FastifyRequest): ProblemFields => ({
  status: 413,
  code: 'body-too-large',
  title: 'The body is larger than this server takes',
  errors: [{ pointer: '#', detail: `send at most ${String(routeOptions.bodyLimit)} bytes` }],
});

const REFUSED: { readonly [status: number]: Pick<ProblemFields, 'code' | 'title' | 'errors'> } = {
  415: NOT_JSON,
};

const noSuchRoute = ({ url, method }: FastifyRequest): ProblemFields => {
  const path = url.split('?')[0] ?? url;
  const allowed = Object.values<Route>(ROUTES)
    .filter((route) => patternOf(route).test(path))
    .map((route) => route.method);
  if (allowed.length === 0)
    return { status: 404, code: 'route-unknown', title: `There is nothing at ${path}` };

  return {
    status: 405,
    code: 'method-not-allowed',
    title: `${path} does not answer ${method}`,
    headers: { allow: [...new Set(allowed)].join(', ') },
  };
};

const patternOf = ({ path }: Route): RegExp =>
  new RegExp(`^${path.replaceAll('.', '\\.').replace(/\{\w+\}/g, '[^/]+')}$`);
