import { done, type Result } from '../../core/problem';
import type { KeptDraft } from '../contract/host-api';
import type { Drafts } from './drafts';
import { dropDraftRequest, keepDraftRequest } from './host-requests';
import type { JobPlaces } from './job-places';

/** The host calls about unsaved work, the same for both hosts; paths stay here, the page knows tokens. */
export interface DraftCalls {
  keepDraft(session: string, value: unknown): Promise<Result<null>>;
  leftOver(): Promise<Result<readonly KeptDraft[]>>;
  dropDraft(value: unknown): Promise<Result<null>>;
}

export function createDraftCalls(drafts: Drafts, places: JobPlaces): DraftCalls {
  return {
    keepDraft: async (session, value) => {
      const request = keepDraftRequest(value);
      if (!request.ok) return request;
      const path = request.value.token === null ? null : places.pathOf(request.value.token);
      return drafts.keep(session, request.value, path === null ? null : { path, hash: places.hashAt(path) });
    },
    leftOver: async () => {
      const left = await drafts.leftOver();
      if (!left.ok) return left;
      return done(
        left.value.map(({ place, ...draft }) => {
          if (place) places.remember(place.path, place.hash);
          return { ...draft, token: place && places.tokenFor(place.path) };
        }),
      );
    },
    dropDraft: async (value) => {
      const request = dropDraftRequest(value);
      return request.ok ? drafts.drop(request.value.id) : request;
    },
  };
}
