-- A link with which somebody without an account sees one lesson before it is out. Only the hash of its token is kept.
-- The release is referred to by value, as downloads do. Portable: H2 and PostgreSQL run the same text.
create table preview_link (
    id           varchar(16)  not null primary key,
    token_hash   varchar(64)  not null unique,
    educator_id  varchar(16)  not null references educator (id) on delete cascade,
    release_id   varchar(16)  not null,
    reader       varchar(200) not null, -- for whom it was made, as the educator calls them
    created_at   timestamp with time zone not null,
    expires_at   timestamp with time zone not null,
    withdrawn_at timestamp with time zone
);
create index preview_link_of_release on preview_link (release_id, created_at);
create index preview_link_by_end on preview_link (expires_at);
