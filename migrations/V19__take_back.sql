-- Taking back what is out, throwing away what is not, and what is told of a correction. Portable: H2 and PostgreSQL run the
-- same text.

-- A lesson that was out and is not to be had at the moment; the reason is for students, and may be empty.
alter table episode add column withdrawn_at timestamp with time zone;
alter table episode add column withdrawn_why varchar(500) default '' not null;

-- A draft that was thrown away: gone from the desk, deleted for good a month later. Its number stays taken until then.
alter table episode add column deleted_at timestamp with time zone;
create index episode_deleted on episode (deleted_at);

-- What students are told of a correction, in one sentence; and whether those who hold an earlier release get a letter.
alter table release add column note varchar(300) default '' not null;
alter table release add column note_by_letter boolean default false not null;
