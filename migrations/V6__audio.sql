-- Audio that was rendered and encoded before, under a digest of all that it depends on: a correction of a word makes no
-- sound anew. Rows keep no file; they count while a release names the files.
create table made_audio (
    recipe  varchar(64) not null primary key,
    made    text        not null, -- JSON: the files, and what the page needs to know of them
    made_at timestamp with time zone not null
);

-- What was heard when an uploaded recording was decoded: its loudness, and a file of peaks and onsets.
alter table upload add column heard text default '' not null; -- JSON; empty while nobody has listened
alter table upload add column heard_sha256 varchar(64) default '' not null;
