-- Programs that work for an educator: a token each, of which only the hash is kept. Portable: H2 and PostgreSQL run the
-- same text.
create table program_token (
    id          varchar(16)  not null primary key,
    token_hash  varchar(64)  not null unique,
    educator_id varchar(16)  not null references educator (id) on delete cascade,
    name        varchar(100) not null, -- what the educator calls the program
    scopes      varchar(100) not null, -- words with a space between them (RFC 6749 section 3.3)
    created_at  timestamp with time zone not null,
    used_at     timestamp with time zone,
    expires_at  timestamp with time zone not null
);
create index program_token_by_educator on program_token (educator_id, created_at);
create index program_token_by_end on program_token (expires_at);

-- What a request that is sent once and no more was answered, so that it can be sent again without being done again.
create table program_answer (
    token_id   varchar(16)  not null references program_token (id) on delete cascade,
    repeat_key varchar(100) not null,
    asked      varchar(64)  not null, -- SHA-256 of the request
    begun_at   timestamp with time zone not null,
    status     integer, -- none while it is under way
    type       varchar(100), -- media type of the body
    location   varchar(300),
    body       text,
    primary key (token_id, repeat_key)
);
create index program_answer_by_age on program_answer (begun_at);

-- By which program of theirs an educator did something; none for themselves.
alter table audit add column program varchar(100);
