-- Pictures that an educator sent for the notes of a lesson, as they were made anew: upright, of a page's size, and with
-- nothing in them but what is seen. Portable: H2 and PostgreSQL run the same text.
create table picture (
    id            varchar(16)  not null primary key,
    educator_id   varchar(16)  not null references educator (id),
    episode_id    varchar(16)  not null references episode (id),
    original_name varchar(255) not null, -- for showing only, never for a path
    words         varchar(500) not null, -- what stands for it where it is not seen, as first typed
    format        varchar(8)   not null,
    wide          integer      not null, -- pixels
    high          integer      not null,
    byte_count    bigint       not null,
    sha256        varchar(64)  not null,
    created_at    timestamp with time zone not null
);
create index picture_of_episode on picture (episode_id, created_at);
create index picture_sha256 on picture (sha256);
