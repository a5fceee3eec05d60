-- What was made of a revision: an immutable set of files. A correction is a new release of the same episode; the one
-- that was published last is the one that readers get, the others stay for whoever has their address.
create table release (
    id           varchar(16)   not null primary key,
    episode_id   varchar(16)   not null references episode (id),
    revision_id  varchar(16)   not null references revision (id),
    number       integer       not null,
    recipe       text          not null, -- JSON: all that its files depend on
    correction   boolean       not null, -- goes out as soon as it is ready, in place of what is out
    state        varchar(10)   not null, -- waiting, building, ready, failed
    steps_done   integer       not null,
    steps_total  integer       not null,
    failure      varchar(2000) not null, -- what went wrong, empty unless failed
    created_at   timestamp with time zone not null,
    built_at     timestamp with time zone,
    published_at timestamp with time zone,
    unique (episode_id, number)
);

create index release_published on release (episode_id, published_at);

create table release_file (
    release_id varchar(16)  not null references release (id),
    place      integer      not null, -- the order in which files are shown
    name       varchar(200) not null,
    role       varchar(20)  not null,
    media_type varchar(80)  not null,
    byte_count bigint       not null,
    sha256     varchar(64)  not null,
    primary key (release_id, name)
);

create index release_file_sha256 on release_file (sha256);
