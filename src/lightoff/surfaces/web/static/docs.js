// swagger-ui on our own description of the API; the page has a main of its own already
SwaggerUIBundle({
  url: "/api/openapi.json",
  dom_id: "#swagger",
  deepLinking: true,
  onComplete: () => document.querySelector("#swagger main")?.setAttribute("role", "presentation"),
});
