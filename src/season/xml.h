/* libxml2's types under automatic cleanup. An xmlChar string is freed by xmlFree only. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <libxml/parser.h>
#include <libxml/tree.h>

static inline void
lw_xml_free (xmlChar *text)
{
  xmlFree (text);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlChar, lw_xml_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlDoc, xmlFreeDoc)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlParserCtxt, xmlFreeParserCtxt)
