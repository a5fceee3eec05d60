-- A recording or picture can be taken out of its lesson, and put back for a month. What a release has used stays as a row
-- beyond that, so that the release can be made again. Portable: H2 and PostgreSQL run the same text.
alter table upload add column removed_at timestamp with time zone;
alter table picture add column removed_at timestamp with time zone;
